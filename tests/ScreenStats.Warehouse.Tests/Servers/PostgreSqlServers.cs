using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

[assembly: Xunit.AssemblyFixture(typeof(ScreenStats.Warehouse.Tests.Servers.PostgreSqlServers))]

namespace ScreenStats.Warehouse.Tests.Servers;

/// <summary>
/// A PostgreSQL server of its own, and one that coordinates three shards: from what Debian installs, on ports of the loopback that were free, with
/// sockets and data in a folder that only their user can look into. Made when a test first asks for them, stopped and removed at the end,
/// also where the process is told to stop.
/// </summary>
public sealed class PostgreSqlServers : IDisposable
{
    /// <summary>Databases have this name, and so has the role that reads.</summary>
    public const string Database = "screenstats", Reader = "reader";

    /// <summary>Shards behind the coordinator.</summary>
    public const int Shards = 3;

    private const string Places = "/usr/lib/postgresql";
    private const int SecondsToStart = 60;
    private readonly Lock gate = new();
    private readonly bool root = Environment.UserName == "root";
    private string? folder;
    private string binaries = "";
    private PostgreSqlServer? alone;
    private PostgreSqlServer? coordinator;

    /// <summary>Why there can be no servers; null where there can.</summary>
    public static string? Missing => Binaries() is null ? "PostgreSQL's server is not installed (on Debian: apt-get install postgresql-15)." : null;

    /// <summary>The password of every role: made for this run.</summary>
    public string Password { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(12));

    /// <summary>One server.</summary>
    public PostgreSqlServer Alone
    {
        get
        {
            lock (gate) return alone ??= Started(1)[0];
        }
    }

    /// <summary>A server in front of three shards.</summary>
    public PostgreSqlServer Coordinator
    {
        get
        {
            lock (gate)
            {
                if (coordinator is not null) return coordinator;
                var servers = Started(1 + Shards);
                var front = servers[0] with { Shards = [.. servers.Skip(1)] };
                front.Run("CREATE EXTENSION postgres_fdw");
                for (var s = 0; s < Shards; s++)
                {
                    front.Run(string.Create(CultureInfo.InvariantCulture, $"CREATE SERVER shard{s} FOREIGN DATA WRAPPER postgres_fdw OPTIONS (host '127.0.0.1', port '{front.Shards[s].Port}', dbname '{Database}', use_remote_estimate 'true', async_capable 'true', fetch_size '10000', fdw_tuple_cost '1')"));
                    foreach (var role in new[] { "postgres", Reader }) front.Run($"CREATE USER MAPPING FOR {role} SERVER shard{s} OPTIONS (user '{role}', password '{Password}')");
                    front.Run($"GRANT USAGE ON FOREIGN SERVER shard{s} TO {Reader}");
                }

                return coordinator = front;
            }
        }
    }

    /// <summary>Puts user and password into the environment, where a program of the warehouse looks for them.</summary>
    public void LetIn(string? password = null)
    {
        Environment.SetEnvironmentVariable("PGUSER", Reader);
        Environment.SetEnvironmentVariable("PGPASSWORD", password ?? Password);
        Environment.SetEnvironmentVariable("PGSSLMODE", "disable");
    }

    /// <summary>Stops one server at once, as a machine that fails would.</summary>
    public void Stop(PostgreSqlServer server) => Control($"-D '{server.Data}' -m immediate -w stop");

    /// <summary>Starts a server again.</summary>
    public void Start(PostgreSqlServer server) => Control(Starting(server));

    public void Dispose()
    {
        AppDomain.CurrentDomain.ProcessExit -= OnExit;
        lock (gate)
        {
            if (folder is null || !Directory.Exists(folder)) return;
            foreach (var data in Directory.EnumerateDirectories(folder).Where(one => File.Exists(Path.Combine(one, "postmaster.pid"))))
            {
                AsOwner($"'{binaries}/pg_ctl' -D '{data}' -m immediate -w stop", mayFail: true);
            }

            Directory.Delete(folder, recursive: true);
            folder = null;
        }
    }

    private static string? Binaries() => Directory.Exists(Places)
        ? Directory.EnumerateDirectories(Places).Select(version => Path.Combine(version, "bin")).Where(bin => File.Exists(Path.Combine(bin, "initdb")) && File.Exists(Path.Combine(bin, "pg_ctl"))).Order(StringComparer.Ordinal).LastOrDefault()
        : null;

    private void OnExit(object? sender, EventArgs e) => Dispose();

    private List<PostgreSqlServer> Started(int count)
    {
        Prepare();
        var first = Directory.EnumerateDirectories(folder!, "data-*").Count();
        var servers = Enumerable.Range(first, count).Select(number => new PostgreSqlServer(Path.Combine(folder!, string.Create(CultureInfo.InvariantCulture, $"data-{number}")), FreePort(), Password)).ToList();
        foreach (var server in servers) AsOwner($"cp -r '{folder}/template' '{server.Data}'");
        AsOwner(string.Join(" && ", servers.Select(server => $"'{binaries}/pg_ctl' {Starting(server)}")));
        foreach (var server in servers)
        {
            server.Run($"CREATE DATABASE {Database}", "postgres");
            server.Run($"CREATE ROLE {Reader} LOGIN PASSWORD '{Password}'");
        }

        return servers;
    }

    private void Prepare()
    {
        if (folder is not null) return;
        binaries = Binaries() ?? throw new InvalidOperationException(Missing);
        // A stated place lets whoever runs the tests look after what a killed run left.
        folder = Environment.GetEnvironmentVariable("SCREENSTATS_SERVERS") is { Length: > 0 } stated ? Path.Combine(stated, "postgresql") : Directory.CreateTempSubdirectory("screenstats-servers-").FullName;
        Directory.CreateDirectory(folder);
        if (root) Shell("chown", "postgres", folder);
        AppDomain.CurrentDomain.ProcessExit += OnExit;
        AsOwner($"chmod 700 '{folder}' && mkdir '{folder}/s' && echo '{Password}' > '{folder}/pw' && '{binaries}/initdb' -D '{folder}/template' -U postgres --auth-local=scram-sha-256 --auth-host=scram-sha-256 --pwfile='{folder}/pw' --no-sync --locale=C.UTF-8 --encoding=UTF8 && rm '{folder}/pw'");
    }

    private string Starting(PostgreSqlServer server) => string.Create(CultureInfo.InvariantCulture,
        $"-D '{server.Data}' -l '{server.Data}/log' -w -t {SecondsToStart} -o \"-p {server.Port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='{folder}/s' -c fsync=off -c full_page_writes=off -c max_connections=40 -c shared_buffers=32MB -c enable_partitionwise_aggregate=on -c enable_partitionwise_join=on\" start");

    private void Control(string arguments) => AsOwner($"'{binaries}/pg_ctl' {arguments}");

    /// <summary>PostgreSQL refuses to run as root.</summary>
    private void AsOwner(string command, bool mayFail = false)
    {
        // What a server inherits and keeps open would keep whoever waits for the output waiting.
        var quiet = $"cd / && {{ {command} ; }} > '{folder}/out' 2>&1 < /dev/null";
        try
        {
            if (root) Shell("runuser", "-u", "postgres", "--", "sh", "-c", quiet);
            else Shell("sh", "-c", quiet);
        }
        catch (InvalidOperationException) when (mayFail)
        {
        }
    }

    private void Shell(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments)) ?? throw new InvalidOperationException($"{program} did not start.");
        process.WaitForExit();
        var log = folder is not null && File.Exists(Path.Combine(folder, "out")) ? File.ReadAllText(Path.Combine(folder, "out")) : "";
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {arguments[0]} ended with {process.ExitCode}: {log.Replace(Password, "...", StringComparison.Ordinal)}");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
