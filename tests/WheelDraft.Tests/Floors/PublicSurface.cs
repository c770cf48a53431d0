using Mono.Cecil;

namespace WheelDraft.Tests.Floors;

/// <summary>What a library shows to those who use it: every public type with its public and protected members, one line each, in a fixed order.</summary>
internal static class PublicSurface
{
    /// <summary>The lines of an assembly. What the compiler adds to records by itself is left out.</summary>
    public static IReadOnlyList<string> Of(string assemblyPath)
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(assemblyPath);
        return [.. assembly.MainModule.Types.SelectMany(Visible).OrderBy(t => t.FullName, StringComparer.Ordinal).SelectMany(Lines)];
    }

    private static IEnumerable<TypeDefinition> Visible(TypeDefinition type) =>
        type.IsPublic || type.IsNestedPublic ? type.NestedTypes.SelectMany(Visible).Prepend(type) : [];

    private static IEnumerable<string> Lines(TypeDefinition type) =>
        Members(type).Order(StringComparer.Ordinal).Select(m => "    " + m).Prepend($"{Kind(type)} {Name(type)}");

    private static string Kind(TypeDefinition type) => type switch
    {
        { IsEnum: true } => "enum",
        { IsInterface: true } => "interface",
        { IsAbstract: true, IsSealed: true } => "static class",
        { IsValueType: true } => IsRecord(type) ? "record struct" : "struct",
        _ => (type.IsSealed ? "sealed " : type.IsAbstract ? "abstract " : "") + (IsRecord(type) ? "record" : "class"),
    };

    private static bool IsRecord(TypeDefinition type) => type.Methods.Any(m => m.Name is "PrintMembers");

    private static IEnumerable<string> Members(TypeDefinition type) =>
    [
        .. type.Fields.Where(f => f.IsPublic && !f.IsSpecialName).Select(f => type.IsEnum ? f.Name : $"{Name(f.FieldType)} {f.Name}"),
        .. type.Properties.Where(p => Shown(p.GetMethod) || Shown(p.SetMethod)).Where(p => p.Name is not "EqualityContract").Select(Told),
        .. type.Methods.Where(m => Shown(m) && !IsMade(type, m) && !m.IsGetter && !m.IsSetter).Select(Told),
    ];

    private static bool Shown(MethodDefinition? method) => method is not null && (method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly);

    // Records are given equality, text and copies by the compiler; enums and delegates have members of their own kind.
    private static bool IsMade(TypeDefinition type, MethodDefinition method) =>
        type.IsEnum
        || method.CustomAttributes.Any(a => a.AttributeType.Name is "CompilerGeneratedAttribute")
        || method.Name is "<Clone>$" or "PrintMembers" or "Deconstruct"
        || (IsRecord(type) && method.Name is "Equals" or "GetHashCode" or "ToString" or "op_Equality" or "op_Inequality")
        || (method.IsConstructor && method.Parameters.Count == 1 && string.Equals(method.Parameters[0].ParameterType.FullName, type.FullName, StringComparison.Ordinal));

    private static string Told(PropertyDefinition property) =>
        $"{Name(property.PropertyType)} {property.Name}{(property.Parameters.Count > 0 ? $"[{Parameters(property.Parameters)}]" : "")} {{ {(Shown(property.GetMethod) ? "get; " : "")}{(Shown(property.SetMethod) ? "init; " : "")}}}";

    private static string Told(MethodDefinition method) =>
        $"{(method.IsStatic ? "static " : "")}{(method.IsConstructor ? "" : Name(method.ReturnType) + " ")}{method.Name}({Parameters(method.Parameters)})";

    private static string Parameters(IEnumerable<ParameterDefinition> parameters) => string.Join(", ", parameters.Select(p => $"{Name(p.ParameterType)} {p.Name}"));

    private static string Name(TypeReference type) => type switch
    {
        GenericInstanceType generic => $"{generic.ElementType.Name.Split('`')[0]}<{string.Join(", ", generic.GenericArguments.Select(Name))}>",
        ArrayType array => Name(array.ElementType) + "[]",
        ByReferenceType reference => "ref " + Name(reference.ElementType),
        TypeSpecification wrapped => Name(wrapped.ElementType),
        { DeclaringType: { } outer } => Name(outer) + "." + type.Name,
        _ => type.Name.Split('`')[0],
    };
}
