using System.Runtime.InteropServices;
using System.Text;
using ScreenStats.Cli;
using ScreenStats.Cli.Terminal;

// A wish to stop, by a person (Ctrl-C), by the system, or by a terminal that is closed. What is at work tidies up and answers 130;
// a second wish ends it at once. Signals are heard on another thread, to the end of the process and not of the work: else one that
// comes while the process closes down would answer 130 without a word for work that is done. So what they use is not given up either.
var cancelled = new CancellationTokenSource();
void Stop(PosixSignalContext signal)
{
    if (cancelled.IsCancellationRequested) return;
    signal.Cancel = true;
    cancelled.Cancel();
}

var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
var hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Stop);

// SIGXFSZ: a file that may not grow further is a fault of writing, to be said in words, not the end of the process.
const PosixSignal FileTooLarge = (PosixSignal)25;
var tooLarge = OperatingSystem.IsWindows() ? null : PosixSignalRegistration.Create(FileTooLarge, signal => signal.Cancel = true);

// Results are UTF-8 without a mark and with \n on every machine.
var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
using var errors = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };

var code = App.Run(args, Console.In, output, errors, RunnerEnvironment.OfProcess(cancelled.Token), TimeProvider.System);
GC.KeepAlive((interrupt, terminate, hangUp, tooLarge));
return code;
