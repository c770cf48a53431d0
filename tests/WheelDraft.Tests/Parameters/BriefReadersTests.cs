using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Whatever a file may say is read by somebody: a key that changes nothing is worse than none.</summary>
public sealed class BriefReadersTests
{
    private static readonly string[] Assemblies = ["WheelDraft.Engineering.dll", "WheelDraft.Drawing.dll", "WheelDraft.Formats.dll", "wheeldraft.dll"];

    // What the compiler writes into records reads every property and means nothing.
    private static readonly HashSet<string> OfRecords = ["Equals", "GetHashCode", "PrintMembers", "ToString", "Deconstruct", "<Clone>$", ".ctor"];

    private static readonly OpCode[] Codes = [.. typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => f.GetValue(null)).OfType<OpCode>()];
    private static readonly Dictionary<byte, OpCode> Short = Codes.Where(c => c.Size == 1).ToDictionary(c => (byte)c.Value);
    private static readonly Dictionary<byte, OpCode> Long = Codes.Where(c => c.Size == 2).ToDictionary(c => (byte)(c.Value & 0xff));

    [Fact]
    public void Properties_OfEveryBrief_HaveAReaderBesideTheOneThatMakesThem()
    {
        HashSet<string> read = [.. Assemblies.SelectMany(Read)];
        string[] unread = [.. Briefs().SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Select(p => $"{t.Name}.{p.Name}")).Where(p => !p.EndsWith(".EqualityContract", StringComparison.Ordinal) && !read.Contains(p)).Order(StringComparer.Ordinal)];
        Assert.Empty(unread);
        Assert.Contains("DriveBrief.BacklashRad", read);
    }

    /// <summary>The brief, and whatever of its chapter can be reached from it.</summary>
    private static HashSet<Type> Briefs()
    {
        Type[] all = typeof(Brief).Assembly.GetTypes();
        HashSet<Type> found = [];
        Queue<Type> open = new([typeof(Brief)]);
        while (open.TryDequeue(out Type? type))
        {
            if (type.Assembly != typeof(Brief).Assembly || type.IsEnum || !found.Add(type))
            {
                continue;
            }

            IEnumerable<Type> asked = type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Select(p => p.PropertyType);
            foreach (Type next in asked.Concat(all.Where(t => t.BaseType == type)))
            {
                Type plain = Nullable.GetUnderlyingType(next) ?? next;
                open.Enqueue(plain);
                foreach (Type argument in plain.GetGenericArguments())
                {
                    open.Enqueue(argument);
                }
            }
        }

        return found;
    }

    /// <summary>Type and property of every getter that an assembly calls.</summary>
    private static IEnumerable<string> Read(string assembly)
    {
        using PEReader file = new(File.OpenRead(Path.Combine(AppContext.BaseDirectory, assembly)));
        MetadataReader data = file.GetMetadataReader();
        List<string> read = [];
        foreach (MethodDefinitionHandle handle in data.MethodDefinitions)
        {
            MethodDefinition method = data.GetMethodDefinition(handle);
            if (method.RelativeVirtualAddress != 0 && Counts(data, method))
            {
                read.AddRange(Called(file.GetMethodBody(method.RelativeVirtualAddress).GetILContent()).Select(t => Getter(data, t)).OfType<string>());
            }
        }

        return read;
    }

    private static bool Counts(MetadataReader data, MethodDefinition method)
    {
        TypeDefinition type = data.GetTypeDefinition(method.GetDeclaringType());
        while (!type.GetDeclaringType().IsNil)
        {
            type = data.GetTypeDefinition(type.GetDeclaringType());
        }

        bool makes = data.GetString(type.Namespace) is "WheelDraft.Formats.Parameters" && data.GetString(type.Name).EndsWith("Maker", StringComparison.Ordinal);
        return !makes && !OfRecords.Contains(data.GetString(method.Name));
    }

    private static IEnumerable<int> Called(ImmutableArray<byte> code)
    {
        for (int at = 0; at < code.Length;)
        {
            OpCode op = code[at] == 0xfe ? Long[code[at + 1]] : Short[code[at]];
            at += op.Size;
            if (op == OpCodes.Call || op == OpCodes.Callvirt)
            {
                yield return code[at] | (code[at + 1] << 8) | (code[at + 2] << 16) | (code[at + 3] << 24);
            }

            at += op.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * (code[at] | (code[at + 1] << 8))),
                _ => 4,
            };
        }
    }

    private static string? Getter(MetadataReader data, int token)
    {
        EntityHandle handle = MetadataTokens.EntityHandle(token);
        (string name, EntityHandle type) = handle.Kind switch
        {
            HandleKind.MethodDefinition => (data.GetString(data.GetMethodDefinition((MethodDefinitionHandle)handle).Name), data.GetMethodDefinition((MethodDefinitionHandle)handle).GetDeclaringType()),
            HandleKind.MemberReference => (data.GetString(data.GetMemberReference((MemberReferenceHandle)handle).Name), data.GetMemberReference((MemberReferenceHandle)handle).Parent),
            _ => ("", default(EntityHandle)),
        };
        string? owner = type.Kind switch
        {
            HandleKind.TypeDefinition when name.Length > 0 => data.GetString(data.GetTypeDefinition((TypeDefinitionHandle)type).Name),
            HandleKind.TypeReference when name.Length > 0 => data.GetString(data.GetTypeReference((TypeReferenceHandle)type).Name),
            _ => null,
        };
        return owner is not null && name.StartsWith("get_", StringComparison.Ordinal) ? $"{owner}.{name[4..]}" : null;
    }
}
