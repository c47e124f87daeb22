// Reading and writing a full design, each form against the bare Protocol Buffers calls on the same bytes in the same
// run.
//
//   read_bench [design.txtpb]      examples/designs/casting.txtpb where none is given
//
// After the usual table a line per pair gives the ratio of speeds; 1.00 is as fast as bare, 2.00 twice as fast. The
// program fails where one is below 0.70. Reading includes limits, positions of every field and all checks of reading.
#include <benchmark/benchmark.h>
#include <google/protobuf/io/zero_copy_stream_impl_lite.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/json_util.h>

#include <cstdio>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "withy/document/document.h"

namespace withy {
namespace {

constexpr double kLeastRatio = 0.70;

// Like ReadDesign it takes over the bytes, as they come from a file: allocating them beside the design is half of what
// a binary read costs the allocator, and belongs to both sides or to none.
v1::Design Bare(Form form, std::string bytes) {
  v1::Design design;
  bool parsed = false;
  switch (form) {
    case Form::kText:
      parsed = google::protobuf::TextFormat::ParseFromString(bytes, &design);
      break;
    case Form::kJson:
      parsed = google::protobuf::util::JsonStringToMessage(bytes, &design).ok();
      break;
    case Form::kBinary:
      parsed = design.ParseFromString(bytes);
      break;
  }
  if (!parsed) std::abort();
  return design;
}

std::string BareWrite(Form form, const v1::Design& design) {
  std::string bytes;
  switch (form) {
    case Form::kText:
      google::protobuf::TextFormat::PrintToString(design, &bytes);
      break;
    case Form::kJson: {
      google::protobuf::util::JsonPrintOptions options;
      options.add_whitespace = true;
      options.preserve_proto_field_names = true;
      if (!google::protobuf::util::MessageToJsonString(design, &bytes, options).ok()) std::abort();
      break;
    }
    case Form::kBinary: {
      google::protobuf::io::StringOutputStream stream(&bytes);
      google::protobuf::io::CodedOutputStream coded(&stream);
      coded.SetSerializationDeterministic(true);
      design.SerializeToCodedStream(&coded);
      break;
    }
  }
  return bytes;
}

void Register(const std::string& name, Form form, const v1::Design& design) {
  const std::string bytes = WriteDesign(design, form);
  const auto add = [&](const std::string& kind, auto work) {
    benchmark::RegisterBenchmark((name + "/" + kind).c_str(), [work](benchmark::State& state) {
      for (auto _ : state) benchmark::DoNotOptimize(work());
    });
  };
  add("read/bare", [form, bytes] { return Bare(form, bytes); });
  add("read/withy", [bytes] { return ReadDesign("bench", bytes); });
  add("write/bare", [form, design] { return BareWrite(form, design); });
  add("write/withy", [form, design] { return WriteDesign(design, form); });
}

// Keeps the median of the times of each benchmark besides printing them.
class RatioReporter : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type == Run::RT_Aggregate && run.aggregate_name == "median") {
        times_[run.run_name.function_name] = run.GetAdjustedCPUTime();
      }
    }
  }

  // Prints the ratios; whether all are high enough.
  bool Judge() const {
    bool fast_enough = true;
    for (const auto& [name, bare] : times_) {
      const std::size_t end = name.rfind("/bare");
      if (end == std::string::npos) continue;
      const std::string pair = name.substr(0, end);
      const double ratio = bare / times_.at(pair + "/withy");
      std::printf("%-14s %5.2f of the speed of bare Protocol Buffers\n", pair.c_str(), ratio);
      fast_enough = fast_enough && ratio >= kLeastRatio;
    }
    return fast_enough;
  }

 private:
  std::map<std::string, double> times_;
};

int Main(int argc, char** argv) {
  std::vector<char*> arguments(argv, argv + argc);
  std::string repetitions = "--benchmark_repetitions=5", report = "--benchmark_report_aggregates_only=true";
  arguments.insert(arguments.begin() + 1, {repetitions.data(), report.data()});
  int count = static_cast<int>(arguments.size());
  benchmark::Initialize(&count, arguments.data());

  const std::string path = count > 1 ? arguments[1] : WITHY_SOURCE_DIR "/examples/designs/casting.txtpb";
  absl::StatusOr<std::string> bytes = ReadBytes(path);
  const ReadResult read = bytes.ok() ? ReadDesign(path, *bytes) : ReadResult();
  if (!read.document) {
    std::fprintf(stderr, "%s: cannot be read\n", path.c_str());
    return EXIT_FAILURE;
  }
  Register("text", Form::kText, read.document->design);
  Register("json", Form::kJson, read.document->design);
  Register("binary", Form::kBinary, read.document->design);
  RatioReporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  return reporter.Judge() ? EXIT_SUCCESS : EXIT_FAILURE;
}

}  // namespace
}  // namespace withy

int main(int argc, char** argv) {
  return withy::Main(argc, argv);
}
