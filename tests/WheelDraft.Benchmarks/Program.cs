WheelDraft.Benchmarks.CircuitBenchmark.Run(Console.Out);
