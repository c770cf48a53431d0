using System.Collections.Concurrent;
using Mono.Cecil;

namespace WheelDraft.Tests.Floors;

/// <summary>Members that only their own library can see and that nothing in the program uses.</summary>
/// <remarks>Left out: constructors, setters, what overrides or implements something, and what the compiler makes. A constant leaves no trace in
/// compiled code and is not looked at.</remarks>
internal static class UnusedMembers
{
    // By assembly: each is read once for all that are asked about.
    private static readonly ConcurrentDictionary<string, Lazy<HashSet<string>>> Used = new(StringComparer.Ordinal);

    /// <summary>The unused members of one assembly.</summary>
    /// <param name="file">The assembly, a file beside the tests.</param>
    /// <param name="program">All assemblies of the program, beside the tests.</param>
    public static IReadOnlyList<string> Of(string file, IReadOnlyList<string> program)
    {
        HashSet<string> used = [.. program.SelectMany(p => Used.GetOrAdd(p, f => new(() => Uses(f))).Value)];
        using AssemblyDefinition assembly = Read(file);
        return [.. assembly.MainModule.Types.SelectMany(WithNested).Where(t => !IsMade(t) && !t.Name.StartsWith('<')).SelectMany(t => t.Methods.Where(m => Counts(t, m)))
            .Select(m => m.FullName).Where(m => !used.Contains(m)).Order(StringComparer.Ordinal)];
    }

    private static HashSet<string> Uses(string file)
    {
        using AssemblyDefinition assembly = Read(file);
        HashSet<string> used = [];
        foreach (MethodDefinition method in assembly.MainModule.Types.SelectMany(WithNested).SelectMany(t => t.Methods).Where(m => m.HasBody))
        {
            // A method that calls itself does not use itself.
            used.UnionWith(method.Body.Instructions.Select(i => i.Operand).OfType<MethodReference>().Select(Plain).Where(n => !string.Equals(n, method.FullName, StringComparison.Ordinal)));
        }

        return used;
    }

    private static AssemblyDefinition Read(string file) => AssemblyDefinition.ReadAssembly(Path.Combine(AppContext.BaseDirectory, file));

    private static IEnumerable<TypeDefinition> WithNested(TypeDefinition type) => type.NestedTypes.SelectMany(WithNested).Prepend(type);

    private static bool IsMade(ICustomAttributeProvider made) =>
        made.CustomAttributes.Any(a => a.AttributeType.Name is "CompilerGeneratedAttribute" or "GeneratedCodeAttribute" or "EmbeddedAttribute");

    private static bool Counts(TypeDefinition type, MethodDefinition method) =>
        !(IsVisible(type) && method.IsPublic)
        && !method.IsConstructor && !method.IsVirtual && !method.HasOverrides && !method.IsSetter && !IsMade(method)
        && !method.Name.StartsWith('<')
        && !(method.IsGetter && type.Properties.First(p => p.GetMethod == method) is { } property && IsMade(property))
        && !(method.Name is "op_Equality" or "op_Inequality" or "Deconstruct" or "PrintMembers" or "GetHashCode" or "Equals" or "ToString" or "Main")
        && !(method.IsGetter && method.Name is "get_EqualityContract");

    private static bool IsVisible(TypeDefinition type) => type.IsPublic || (type.IsNestedPublic && IsVisible(type.DeclaringType));

    // A method of a generic type or one with type arguments is named as it is declared.
    private static string Plain(MethodReference method)
    {
        MethodReference declared = method is GenericInstanceMethod generic ? generic.ElementMethod : method;
        return declared.DeclaringType is GenericInstanceType type
            ? new MethodReference(declared.Name, declared.ReturnType, type.ElementType) is var plain && Copy(declared, plain) ? plain.FullName : declared.FullName
            : declared.FullName;
    }

    private static bool Copy(MethodReference from, MethodReference to)
    {
        foreach (ParameterDefinition parameter in from.Parameters)
        {
            to.Parameters.Add(new(parameter.ParameterType));
        }

        return true;
    }
}
