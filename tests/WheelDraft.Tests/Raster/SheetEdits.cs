using WheelDraft.Drawing;

namespace WheelDraft.Tests.Raster;

/// <summary>Sheets that are not quite right, to see whether it is noticed.</summary>
internal static class SheetEdits
{
    /// <summary>The sheet without one of its groups.</summary>
    internal static Sheet Without(Sheet sheet, string id) => Changed(sheet, n => n is SheetGroup group && string.Equals(group.Id, id, StringComparison.Ordinal) ? null : n);

    /// <summary>The sheet with another item in the place of one.</summary>
    internal static Sheet With(Sheet sheet, SheetItem old, SheetItem other) => Changed(sheet, n => ReferenceEquals(n, old) ? other : n);

    private static Sheet Changed(Sheet sheet, Func<SheetNode, SheetNode?> change) =>
        new(sheet.Words, sheet.Size, [.. Changed(sheet.Groups, change).Cast<SheetGroup>()], sheet.Warnings);

    private static IEnumerable<SheetNode> Changed(IEnumerable<SheetNode> nodes, Func<SheetNode, SheetNode?> change) =>
        nodes.Select(change).OfType<SheetNode>().Select(n => n is SheetGroup group ? new SheetGroup(group.Name, [.. Changed(group.Content, change)]) : n);
}
