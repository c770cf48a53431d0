using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>The wiring diagram; the script shows which nets are live and which contacts are closed.</summary>
internal sealed class ShowWiring
{
    // Room round the diagram for labels, mm.
    private const double SideMm = 12;
    private const double TopMm = 14;
    private const double BottomMm = 8;

    // Size on the screen where there is room, pixels of the page: letters of 3.1 mm are then 13 high.
    private const double PxPerMm = 4.2;

    // Half the length of a symbol, mm.
    private const double HalfMm = 6;
    private const double MotorRadiusMm = 4.2;

    private readonly CircuitNetwork _network;
    private readonly WiringLayout _layout;
    private readonly Markup _svg = new();

    private ShowWiring(Design design, CircuitNetwork network)
    {
        _network = network;
        _layout = WiringLayout.Of(new CircuitRequest(design.Brief, [.. network.Schedules.Take(design.Brief.Outputs.Count)]));
    }

    /// <summary>The picture.</summary>
    public static string Write(Design design, CircuitNetwork network) => new ShowWiring(design, network).Draw();

    private static string N(double value) => SvgMarkup.Number(value);

    private string Draw()
    {
        double widthMm = _layout.WidthMm + (2 * SideMm);
        double heightMm = _layout.HeightMm + TopMm + BottomMm;
        string size = $"width=\"{N(widthMm * PxPerMm)}\" height=\"{N(heightMm * PxPerMm)}\"";
        string box = $"{N(-SideMm)} {N(-TopMm)} {N(widthMm)} {N(heightMm)}";
        _svg.Put($"<svg id=\"wiring\" class=\"wiring\" {size} viewBox=\"{box}\" role=\"img\" aria-label=\"Wiring diagram: nets upright, contacts, inputs and loads between them; live nets are drawn heavy and bear their voltage\">\n");
        foreach (WiringBar bar in _layout.Bars)
        {
            Bar(bar);
        }

        foreach (WiringSymbol symbol in _layout.Symbols)
        {
            Symbol(symbol);
        }

        return _svg.Add("</svg>\n").ToString();
    }

    private int NodeOf(int bar) => _layout.Bars[bar].IsWheel ? _network.WheelNode : _network.NodeOf(_layout.Bars[bar].Net);

    private void Bar(WiringBar bar)
    {
        int node = bar.IsWheel ? _network.WheelNode : _network.NodeOf(bar.Net);
        _svg.Put($"<g class=\"net\" data-node=\"{node}\"><line x1=\"{N(bar.XMm)}\" x2=\"{N(bar.XMm)}\" y1=\"{N(bar.TopMm)}\" y2=\"{N(bar.BottomMm)}\"/>");
        _svg.Put($"<text class=\"net-name\" x=\"{N(bar.XMm)}\" y=\"{N(bar.TopMm - 6.4)}\">{SvgMarkup.Escaped(bar.IsWheel ? "wheel" : bar.Net)}</text>");
        _svg.Put($"<text class=\"net-volts\" x=\"{N(bar.XMm)}\" y=\"{N(bar.TopMm - 2.6)}\"></text></g>\n");
    }

    private void Symbol(WiringSymbol symbol)
    {
        string at = symbol.Kind switch
        {
            WiringKind.Feed => "data-feed=\"0\"",
            WiringKind.Ring => FormattableString.Invariant($"data-contact=\"{_network.ContactOf(symbol.Name)}\""),
            WiringKind.Input when _network.LeverOf(symbol.Name) is { } lever => FormattableString.Invariant($"data-contact=\"{lever.Contact}\""),
            WiringKind.Input => FormattableString.Invariant($"data-input=\"{_network.InputOf(symbol.Name)}\""),
            _ => FormattableString.Invariant($"data-load=\"{_network.LoadOf(symbol.Name)}\""),
        };
        bool isSwitch = symbol.Kind is WiringKind.Feed or WiringKind.Ring or WiringKind.Input;
        _svg.Put($"<g class=\"{(isSwitch ? "switch" : symbol.Kind == WiringKind.Motor ? "load motor" : "load")}\" {at} transform=\"translate({N(symbol.CentreMm)} {N(symbol.YMm)})\">");
        double half = symbol.Kind == WiringKind.Motor ? MotorRadiusMm : HalfMm;
        Lead(symbol, symbol.LeftBar, symbol.LeftMm, -half);
        Lead(symbol, symbol.RightBar, symbol.RightMm, half);
        _svg.Add(symbol.Kind switch
        {
            WiringKind.Motor => "<circle class=\"body\" r=\"4.2\"/><text class=\"letter\" y=\"1.5\">M</text>",
            WiringKind.Load => "<rect class=\"body\" x=\"-6\" y=\"-2.4\" width=\"12\" height=\"4.8\"/><path class=\"mark\" d=\"M-1.6 -1.6L1.6 1.6M-1.6 1.6L1.6 -1.6\"/>",
            _ => "<circle class=\"pole\" cx=\"-6\" r=\"0.8\"/><circle class=\"pole\" cx=\"6\" r=\"0.8\"/><path class=\"blade open\" d=\"M-6 0L5 -4.4\"/><path class=\"blade closed\" d=\"M-6 0H6\"/>",
        });
        _svg.Put($"<text class=\"name\" y=\"{(isSwitch ? "4.6" : symbol.Kind == WiringKind.Motor ? "-5.6" : "-3.8")}\">{SvgMarkup.Escaped(symbol.Name)}</text></g>\n");
    }

    private void Lead(WiringSymbol symbol, int bar, double endMm, double fromMm) =>
        _svg.Put($"<g class=\"net\" data-node=\"{NodeOf(bar)}\"><line x1=\"{N(fromMm)}\" x2=\"{N(endMm - symbol.CentreMm)}\" y1=\"0\" y2=\"0\"/><circle cx=\"{N(endMm - symbol.CentreMm)}\" cy=\"0\" r=\"0.9\"/></g>");
}
