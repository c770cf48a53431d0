using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What stands on a sheet: an item or a group of them.</summary>
internal abstract class SheetNode
{
    private protected SheetNode()
    {
    }
}

/// <summary>A named group of items: a layer of the picture.</summary>
/// <remarks>Immutable. Nested groups and items keep one common drawing order.</remarks>
internal sealed class SheetGroup : SheetNode
{
    /// <summary>A group from its name and content.</summary>
    /// <param name="name">Id, title, class and description.</param>
    /// <param name="content">Items and nested groups in drawing order.</param>
    public SheetGroup(GroupName name, IReadOnlyList<SheetNode> content)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(content);
        Name = name;
        Content = [.. content];
    }

    /// <summary>Id, title, class and description.</summary>
    public GroupName Name { get; }

    /// <summary>Id, once on a sheet.</summary>
    public string Id => Name.Id;

    /// <summary>Items and nested groups in drawing order.</summary>
    public IReadOnlyList<SheetNode> Content { get; }

    /// <summary>All items, those of nested groups included, in drawing order.</summary>
    public IEnumerable<SheetItem> Items => Content.SelectMany(n => n switch
    {
        SheetGroup group => group.Items,
        SheetItem item => [item],
        _ => [],
    });

    /// <summary>The same group at another place and size on the paper.</summary>
    public SheetGroup Placed(Placement to) => new(Name, [.. Content.Select(n => n switch
    {
        SheetGroup group => group.Placed(to),
        SheetItem item => item.Placed(to),
        _ => n,
    })]);

    /// <summary>This group and all nested ones.</summary>
    public IEnumerable<SheetGroup> WithNested => Content.OfType<SheetGroup>().SelectMany(g => g.WithNested).Prepend(this);
}

/// <summary>The name of a group.</summary>
internal sealed record GroupName
{
    /// <summary>A name from its id, title and class.</summary>
    /// <param name="id">Letters a to z, digits and hyphens, beginning with a letter; once on a sheet.</param>
    /// <param name="title">A few words for people.</param>
    /// <param name="role">What it is: a class that several groups may share (copper, dimensions, frame), of the same characters.</param>
    /// <exception cref="ArgumentException">Id or class has other characters.</exception>
    public GroupName(string id, string title, string role)
    {
        Id = Checked(id);
        Title = title;
        Role = Checked(role);
    }

    /// <summary>Id, once on a sheet.</summary>
    public string Id { get; }

    /// <summary>A few words for people.</summary>
    public string Title { get; }

    /// <summary>What it is; groups of one meaning share it.</summary>
    public string Role { get; }

    /// <summary>A sentence for screen readers, where the title does not say enough; or null.</summary>
    public string? Description { get; init; }

    private static string Checked(string word)
    {
        ArgumentException.ThrowIfNullOrEmpty(word);
        bool good = char.IsAsciiLetterLower(word[0]) && word.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');
        return good ? word : throw new ArgumentException($"'{word}' is no id: letters a to z, digits and hyphens, beginning with a letter.", nameof(word));
    }
}
