using System.Text;
using ScreenStats.Cli;
using ScreenStats.Cli.Terminal;

using var cancelled = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    cancelled.Cancel();
};

// Results are UTF-8 without a mark and with \n on every machine.
var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
using var errors = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };

return App.Run(args, Console.In, output, errors, RunnerEnvironment.OfProcess(cancelled.Token), TimeProvider.System);
