using Xunit.Sdk;
using Xunit.v3;

// A class is no unit of time: the longest one would keep one processor at work for a minute after the other has nothing left to do.
[assembly: Parallelization(Mode = ParallelMode.All)]
