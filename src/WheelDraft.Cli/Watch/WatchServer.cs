using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using WheelDraft.Formats.Outputs;

namespace WheelDraft.Cli;

// The only file that knows of a web server: its types are loaded when, and only when, something is watched.

/// <summary>Serves a watched design to this machine's own browsers, on 127.0.0.1 and a port that the system chooses.</summary>
internal sealed class WatchServer
{
    // Time that open connections have to end by themselves; well below the second in which Ctrl-C has to stop.
    private static readonly TimeSpan StopPatience = TimeSpan.FromMilliseconds(250);

    /// <summary>Connections at one time: a browser opens about six for each of a few pages. One more is closed at once.</summary>
    internal const int MostConnections = 32;

    // Time in which a request has to have come; what only connects and says nothing is let go after it.
    private static readonly TimeSpan HeadersPatience = TimeSpan.FromSeconds(5);

    private readonly WebApplication _server;
    private readonly CancellationToken _stop;
    private readonly Func<WatchedDesign> _now;
    private readonly string _file;
    private readonly (byte[] Bytes, string Policy) _page = WatchPage.Write();
    private string _port = "";

    private WatchServer(string file, Func<WatchedDesign> now, CancellationToken stop)
    {
        _file = file;
        _now = now;
        _stop = stop;
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Limits.MaxRequestBodySize = 0;
            kestrel.Limits.RequestHeadersTimeout = HeadersPatience;
        });
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Configuration["AllowedHosts"] = "*";
        _server = builder.Build();
        _server.Run(Answer);
    }

    /// <summary>Serves until stopped.</summary>
    /// <param name="file">The file's name, for the page.</param>
    /// <param name="now">The saving to show.</param>
    /// <param name="announce">Gets the address once it can be opened.</param>
    /// <param name="stop">Ends the serving.</param>
    public static void Run(string file, Func<WatchedDesign> now, Action<string> announce, CancellationToken stop) =>
        new WatchServer(file, now, stop).RunAsync(announce).GetAwaiter().GetResult();

    private async Task RunAsync(Action<string> announce)
    {
        await _server.StartAsync(CancellationToken.None).ConfigureAwait(false);
        Uri address = new(_server.Urls.First());
        _port = address.Port.ToString(CultureInfo.InvariantCulture);
        announce($"http://127.0.0.1:{_port}/");
        try
        {
            await Task.Delay(Timeout.Infinite, _stop).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            using CancellationTokenSource patience = new(StopPatience);
            await _server.StopAsync(patience.Token).ConfigureAwait(false);
        }
    }

    /// <summary>Whether a request comes from this page, or from an address typed in by hand: no other page may ask.</summary>
    private bool IsOwn(HttpRequest request)
    {
        string host = request.Host.Value ?? "";
        string[] own = [$"127.0.0.1:{_port}", $"localhost:{_port}"];
        return own.Contains(host, StringComparer.OrdinalIgnoreCase)
            && request.Headers.Origin.All(o => own.Any(h => string.Equals(o, "http://" + h, StringComparison.OrdinalIgnoreCase)));
    }

    private async Task Answer(HttpContext context)
    {
        HttpResponse response = context.Response;
        response.Headers.CacheControl = "no-store";
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
        response.Headers["Referrer-Policy"] = "no-referrer";
        string path = context.Request.Path.Value ?? "/";
        if (!IsOwn(context.Request))
        {
            await Text(response, StatusCodes.Status403Forbidden, "Only this machine's own page is answered.").ConfigureAwait(false);
        }
        else if (!HttpMethods.IsGet(context.Request.Method))
        {
            await Text(response, StatusCodes.Status405MethodNotAllowed, "Only GET is answered.").ConfigureAwait(false);
        }
        else
        {
            await (path switch
            {
                "/" => Index(response),
                "/state" => Send(response, "application/json", WatchJson.State(_now(), _file)),
                "/files" => Send(response, "application/json", WatchJson.Files(_now())),
                "/sheets" => Send(response, "application/json", WatchJson.Sheets(_now())),
                "/events" => Events(context),
                _ => OutputOf(response, path),
            }).ConfigureAwait(false);
        }
    }

    private Task Index(HttpResponse response)
    {
        response.Headers.ContentSecurityPolicy = _page.Policy;
        return Send(response, "text/html; charset=utf-8", _page.Bytes);
    }

    /// <summary>Sends the number of each saving as soon as it has been worked out.</summary>
    private async Task Events(HttpContext context)
    {
        using CancellationTokenSource end = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, _stop);
        context.Response.ContentType = "text/event-stream";
        try
        {
            for (WatchedDesign shown = _now(); ; shown = _now())
            {
                string message = string.Create(CultureInfo.InvariantCulture, $"data: {shown.Version}\n\n");
                await context.Response.WriteAsync(message, end.Token).ConfigureAwait(false);
                await context.Response.Body.FlushAsync(end.Token).ConfigureAwait(false);
                await shown.Followed.WaitAsync(end.Token).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed, or the watching ends: no one is left to send to.
            return;
        }
    }

    /// <summary>A file of the set, from memory.</summary>
    private Task OutputOf(HttpResponse response, string path)
    {
        const string folder = "/files/";
        WatchedDesign now = _now();
        string name = path.StartsWith(folder, StringComparison.Ordinal) ? path[folder.Length..] : "";
        if (string.Equals(name, "show/index.html", StringComparison.Ordinal) && now.Design is not null)
        {
            return Send(response, "text/html; charset=utf-8", now.Page);
        }

        return name.Length > 0 && now.FileNamed(name) is { } file
            ? Send(response, TypeOf(file), file.Bytes)
            : Text(response, StatusCodes.Status404NotFound, "There is no such file.");
    }

    private static string TypeOf(OutputFile file) => Path.GetExtension(file.Name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".png" => "image/png",
        ".pdf" => "application/pdf",
        ".json" => "application/json",
        ".md" or ".csv" => "text/plain; charset=utf-8",
        ".dxf" => "image/vnd.dxf",
        _ => "application/octet-stream",
    };

    private static Task Send(HttpResponse response, string type, byte[] bytes)
    {
        response.ContentType = type;
        response.ContentLength = bytes.Length;
        return response.Body.WriteAsync(bytes).AsTask();
    }

    private static Task Text(HttpResponse response, int status, string words)
    {
        response.StatusCode = status;
        return Send(response, "text/plain; charset=utf-8", Encoding.UTF8.GetBytes(words));
    }
}
