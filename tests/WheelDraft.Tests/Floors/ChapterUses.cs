using Mono.Cecil;
using Mono.Cecil.Cil;

namespace WheelDraft.Tests.Floors;

/// <summary>Which types of its own project each type uses, read from the compiled assembly: bases, members, locals and every instruction.</summary>
/// <remarks>A constant leaves no trace in compiled code, so a use of nothing but a constant of another chapter is not seen.</remarks>
internal static class ChapterUses
{
    /// <summary>Every use of one outermost type by another, each pair once.</summary>
    public static IReadOnlySet<(string User, string Used)> Of(string assemblyPath)
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(assemblyPath);
        HashSet<(string, string)> uses = [];
        foreach (TypeDefinition type in assembly.MainModule.Types.SelectMany(WithNested))
        {
            string user = Outermost(type).Name;
            foreach (TypeReference used in Named(type).OfType<TypeReference>().SelectMany(Parts))
            {
                if (used.Scope == assembly.MainModule)
                {
                    uses.Add((Plain(user), Plain(Outermost(used).Name)));
                }
            }
        }

        return uses;
    }

    private static IEnumerable<TypeDefinition> WithNested(TypeDefinition type) => type.NestedTypes.SelectMany(WithNested).Prepend(type);

    private static TypeReference Outermost(TypeReference type) => type.DeclaringType is { } outer ? Outermost(outer) : type;

    // Generic types carry their number of parameters in their name.
    private static string Plain(string name) => name.Split('`')[0];

    private static IEnumerable<TypeReference?> Named(TypeDefinition type) =>
    [
        type.BaseType,
        .. type.Interfaces.Select(i => i.InterfaceType),
        .. type.Fields.Select(f => f.FieldType),
        .. type.Methods.SelectMany(Named),
    ];

    private static IEnumerable<TypeReference?> Named(MethodDefinition method) =>
    [
        method.ReturnType,
        .. method.Parameters.Select(p => p.ParameterType),
        .. method.HasBody ? method.Body.Variables.Select(v => v.VariableType).Concat(method.Body.Instructions.SelectMany(Named)) : [],
    ];

    private static IEnumerable<TypeReference?> Named(Instruction instruction) => instruction.Operand switch
    {
        TypeReference type => [type],
        GenericInstanceMethod method => [method.DeclaringType, .. method.GenericArguments],
        MethodReference method => [method.DeclaringType],
        FieldReference field => [field.DeclaringType],
        _ => [],
    };

    private static IEnumerable<TypeReference> Parts(TypeReference type) => type switch
    {
        GenericInstanceType generic => generic.GenericArguments.SelectMany(Parts).Append(generic.ElementType),
        TypeSpecification wrapped => Parts(wrapped.ElementType),
        GenericParameter => [],
        _ => [type],
    };
}
