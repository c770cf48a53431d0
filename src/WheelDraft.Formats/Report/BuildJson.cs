using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What the building guide rests on: drive, stock, bases, the test with a meter.</summary>
internal static class BuildJson
{
    public static void Write(JsonSheet json, Design design) => json.Object("build", () =>
    {
        json.Object("motor", () => Motor(json, design));
        if (BuildFigures.MostCurrentA(design) is double most && double.IsFinite(most))
        {
            json.Plain("most_contact_current_a", most);
        }

        json.Objects("loads", design.Brief.DriveMotor is LoadBrief motor ? [.. design.Brief.Loads, motor] : design.Brief.Loads, load =>
        {
            json.Text("name", load.Name);
            json.Text("rating", LoadWords.Of(load.Rating));
        });
        if (design.Brief.Wheel.Fixings is FixingsBrief fixings)
        {
            json.Object("fixings", () =>
            {
                json.Whole("count", fixings.Count);
                json.Mm("diameter_mm", fixings.DiameterMm);
                json.Mm("head_mm", fixings.HeadMm);
                json.Mm("grip_mm", BuildFigures.GripMm(design));
            });
        }

        json.Objects("parts", design.Parts.All, part =>
        {
            Stock(json, part, CutWork.Of(design.Brief, part));
            HoldingTab[] tabs = [.. HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, part).SelectMany(t => t.Tabs)];
            if (tabs.Length > 0)
            {
                json.Objects("holding_tabs", tabs, t =>
                {
                    json.MmList("at_mm", t.At.X, t.At.Y);
                    json.Mm("width_mm", design.Brief.Process.TabWidthMm);
                });
            }
        });
        json.Objects("sheets", design.Parts.Nested, nested => Sheets(json, nested));
        json.Objects("screws", design.Screws, screw =>
        {
            json.Text("name", screw.Name);
            json.Text("thread", screw.Thread);
            json.MmList("at_mm", screw.Meets.X, screw.Meets.Y, screw.Meets.Z);
            json.Deg("direction_deg", screw.DirectionRad);
            json.Mm("length_mm", screw.LengthMm);
            json.Mm("travel_mm", screw.TravelMm);
            json.Objects("lugs", screw.Lugs, lug =>
            {
                json.MmList("from_mm", lug.From.X, lug.From.Y);
                json.MmList("to_mm", lug.To.X, lug.To.Y);
                json.Mm("width_mm", screw.LugWidthMm);
            });
        });
        json.Objects("bases", design.Parts.Bases, plate => Base(json, plate));
        json.Object("cold_test", () => Cold(json, ColdTest.Of(design.Circuit)));
    });

    private static void Motor(JsonSheet json, Design design)
    {
        json.Plain("wheel_rpm", 60 / design.Motion.TurnTimeS);
        if (design.Brief.Drive is { Poles: int poles, GearRatio: double ratio })
        {
            json.Whole("poles", poles);
            json.Plain("gear_down", ratio);
        }
        else if (StandardSpeeds.For(design.Motion.TurnTimeS, design.Brief.Supply.FrequencyHz) is MotorSpeed speed)
        {
            json.Plain("usual_rpm", speed.Rpm);
            json.Plain("gear_down", speed.GearDown);
        }

        if (design.Strips.Friction is FrictionTorque friction)
        {
            json.Plain("wanted_torque_nm", BuildFigures.WantedTorqueNm(friction));
        }
    }

    private static void Stock(JsonSheet json, Part part, CutWork work)
    {
        json.Text("file", part.FileName);
        if (part.Stock.Material is string material)
        {
            json.Text("material", material);
        }

        if (part.Stock.ThicknessMm is double thickness)
        {
            json.Mm("thickness_mm", thickness);
        }

        json.MmList("size_mm", part.CutBounds.Width, part.CutBounds.Height);
        json.Plain("area_mm2", work.AreaMm2);
        json.Mm("cut_length_mm", work.CutLengthMm);
        json.Whole("pierces", work.Pierces);
        if (work.MassG is double mass)
        {
            json.Plain("mass_g", mass);
        }

        if (work.TimeS is (double least, double most))
        {
            json.RawList("time_s", JsonSheet.Figure(least, 0), JsonSheet.Figure(most, 0));
        }
    }

    private static void Sheets(JsonSheet json, NestedStock nested)
    {
        json.Text("material", nested.Stock.Material);
        json.Mm("thickness_mm", nested.Stock.ThicknessMm);
        json.MmList("size_mm", nested.Stock.WidthMm, nested.Stock.HeightMm);
        json.Mm("gap_mm", nested.Stock.GapMm);
        json.Whole("sets", nested.Stock.Sets);
        json.Whole("first", nested.FirstNumber);
        json.Whole("sheets", nested.Result.Sheets.Count);
        json.Whole("least_sheets", nested.Result.LeastSheets);
        json.Plain("used_share", nested.UsedShare);
        json.Objects("parts", nested.Pieces, piece =>
        {
            json.Text("name", piece.Mark);
            json.Text("file", piece.Part.FileName);
        });
    }

    private static void Base(JsonSheet json, BasePlate plate)
    {
        json.Text("surface", plate.Surface.Name);
        json.MmList("corner_mm", plate.Part.CutBounds.MinX, plate.Part.CutBounds.MinY);
        json.Objects("holes", plate.Holes, hole =>
        {
            json.Text("for", hole.Name);
            json.MmList("at_mm", hole.At.X, hole.At.Y);
            json.Mm("diameter_mm", hole.DiameterMm);
        });
        json.Objects("clamps", plate.Clamps, clamp =>
        {
            json.Text("strip", clamp.Strip);
            json.RawList("outline", clamp.Edge.Pieces.Select(p => JsonSheet.List([JsonSheet.MmFigure(p.Start.X), JsonSheet.MmFigure(p.Start.Y), "0"])));
        });
    }

    private static void Cold(JsonSheet json, ColdTest test)
    {
        json.Array("pairs", test.Pairs, p => json.RawValue(JsonSheet.List([JsonSheet.Quoted(p.First), JsonSheet.Quoted(p.Second)])));
        json.Objects("rows", test.Rows, row =>
        {
            json.Deg("from_deg", row.FromRad);
            json.RawAngle("length_deg", JsonSheet.ExtentFigure(row.LengthRad));
            if (row.SureDeg is (double from, double to))
            {
                json.RawList("sure_deg", JsonSheet.Figure(from, 1), JsonSheet.Figure(to, 1));
            }

            json.RawList("closed", row.Closed.Select(c => c ? "true" : "false"));
        });
    }
}
