// Recording at the bench: what `trim`, `balance` and `guides` write into the log of a design.
#ifndef WITHY_CLI_BENCH_LOG_H_
#define WITHY_CLI_BENCH_LOG_H_

#include <optional>
#include <string>
#include <vector>

#include "command.h"
#include "withy/review/bench_readings.h"
#include "withy/review/checked_design.h"
#include "withy/units/parse.h"
#include "withy/v1/log.pb.h"

namespace withy {

class Io;

// --note, --by, -o, --force: for every command that records.
std::span<const OptionSpec> RecordingOptions();

// The quantity that an option gives, as written and in the kind's first unit; unset where it was not given. False, said
// on standard error, where it is no quantity of that kind: kUsage.
bool ReadLength(const Options& options, std::string_view option, Io& io, std::optional<LengthText>* length);
bool ReadMass(const Options& options, std::string_view option, Io& io, std::optional<MassText>* mass);
bool ReadAngle(const Options& options, std::string_view option, Io& io, std::optional<AngleText>* angle);

// The same as the schema keeps it: measured, in the unit that was typed. `plus_minus` may be in another unit.
v1::Length MeasuredLength(const LengthText& length, const std::optional<LengthText>& plus_minus);
v1::Mass MeasuredMass(const MassText& mass);
v1::Angle MeasuredAngle(const AngleText& angle);

// Writes what has become of a design: in place of the operand, unless somebody else wrote it meanwhile, or to -o. kDone, or
// the exit status of what was said on standard error.
int StoreDesign(const Document& document, const std::string& bytes, const Options& options, Io& io);

// "2026-05-02": today by the bench's clock, or SOURCE_DATE_EPOCH.
std::string BenchDate();

// Numbers, dates and signs the entries, looks whether `readings` may be recorded, and writes them into the log of
// `checked`: in place, or to -o. Then `checked` is the design with them, reviewed again. kDone, or the exit status of
// what kept it from being written, said on standard error: kFindings where the readings are refused.
int Record(std::vector<v1::Entry> entries, const BenchReadings& readings, const Options& options, Io& io,
           CheckedDesign& checked);

// Where the results of a command that may have recorded go: standard error where the design itself went to standard
// output.
void PrintResult(const std::string& text, const Options& options, bool recorded, Io& io);

}  // namespace withy

#endif  // WITHY_CLI_BENCH_LOG_H_
