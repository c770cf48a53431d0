namespace WheelDraft.Fuzz;

/// <summary>The targets by name.</summary>
internal sealed class Targets : IDisposable
{
    private ArgumentTarget? _arguments;

    public ITarget Named(string name) => name switch
    {
        "parameters" => new ParameterTarget(),
        "drawings" => new DrawingTarget(),
        "arguments" => _arguments ??= new ArgumentTarget(Path.Combine(AppContext.BaseDirectory, "corpus")),
        _ => throw new ArgumentException($"There is no target '{name}'; there are parameters, drawings and arguments.", nameof(name)),
    };

    /// <summary>The target of a case, by the ending of its file.</summary>
    public ITarget OfFile(string path) => Named(Path.GetExtension(path) switch { ".toml" => "parameters", ".dxf" => "drawings", _ => "arguments" });

    public void Dispose() => _arguments?.Dispose();
}
