// Runs the benchmarks and ends with a table of ratios, where one was measured against another that
// does the same job: names "job/way", the first way of a job being ours.
#include <benchmark/benchmark.h>

#include <cstdio>
#include <string>
#include <vector>

namespace {

class RatioReporter : public benchmark::ConsoleReporter {
public:
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs)
      if (!run.error_occurred && run.run_type == Run::RT_Iteration)
        times_.emplace_back(run.benchmark_name(), run.GetAdjustedCPUTime());
    ConsoleReporter::ReportRuns(runs);
  }

  void Finalize() override {
    ConsoleReporter::Finalize();
    std::string job, ours;
    double base = 0;
    for (const auto& [name, time] : times_) {
      const auto slash = name.find('/');
      if (slash == std::string::npos) continue;
      if (name.substr(0, slash) != job) {
        job = name.substr(0, slash), ours = name.substr(slash + 1), base = time;
        continue;
      }
      std::printf("%s: %s takes %.2f times as long as %s\n", job.c_str(),
                  name.substr(slash + 1).c_str(), time / base, ours.c_str());
    }
  }

private:
  std::vector<std::pair<std::string, double>> times_;
};

} // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  RatioReporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  benchmark::Shutdown();
}
