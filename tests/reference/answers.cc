// answers FILE.json...: reads files of reference cases (`family`, then `cases`, each with `id`, `type`, `input`) and
// prints the library's answers as one JSON object, {"case id": {"field": value}}, as compare.py and compare_fit.py read
// them. What cannot be answered yet is listed on standard error and left out.
#include <cstdio>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <string_view>

#include "rapidjson/document.h"
#include "rapidjson/stringbuffer.h"
#include "rapidjson/writer.h"
#include "reference/balance_answers.h"
#include "reference/bending_answers.h"
#include "reference/bonding_answers.h"
#include "reference/fit_answers.h"
#include "reference/frequency_answers.h"
#include "reference/identify_answers.h"
#include "reference/line_load_answers.h"
#include "reference/mass_properties.h"
#include "reference/placement_answers.h"

namespace {

using rapidjson::Document;
using rapidjson::Value;

using Answer = Value (*)(const Value& entry, Document::AllocatorType& allocator);

struct Family {
  std::string_view name;
  Answer answer;
};

constexpr Family kFamilies[] = {
    {"A", withy::reference::AnswerTipLoad},
    {"B", withy::reference::AnswerUniform},
    {"C", withy::reference::AnswerTapered},
    {"D", withy::reference::AnswerFrequencies},
    {"E", withy::reference::AnswerMassProperties},
    {"F", withy::reference::AnswerTapered},
    {"G", withy::reference::AnswerLineLoad},
    {"H", withy::reference::AnswerIdentification},
    {"J", withy::reference::AnswerFit},
    {"K", withy::reference::AnswerBonding},
    {"N", withy::reference::AnswerBalance},
    {"P", withy::reference::AnswerPlacement},
};

// Null for a family that has no answers yet.
Answer AnswerOfFamily(const std::string& name) {
  for (const Family& family : kFamilies) {
    if (family.name == name) return family.answer;
  }
  return nullptr;
}

bool AnswerFile(const char* path, Document& answers) {
  std::ifstream stream(path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(stream), {}};
  Document file;
  file.Parse<rapidjson::kParseFullPrecisionFlag>(text.c_str());
  if (!stream.good() && text.empty()) {
    std::cerr << path << ": cannot be read\n";
    return false;
  }
  if (file.HasParseError() || !file.IsObject() || !file.HasMember("cases") || !file.HasMember("family")) {
    std::cerr << path << ": not a file of reference cases\n";
    return false;
  }
  const std::string family = file["family"].GetString();
  const Answer answer_of = AnswerOfFamily(family);
  for (const Value& entry : file["cases"].GetArray()) {
    Value answer = answer_of ? answer_of(entry, answers.GetAllocator()) : Value();
    if (answer.IsNull()) {
      std::cerr << "missing: family " << family << ", " << entry["id"].GetString() << "\n";
      continue;
    }
    answers.AddMember(Value(entry["id"].GetString(), answers.GetAllocator()), answer, answers.GetAllocator());
  }
  return true;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) {
    std::cerr << "usage: answers FILE.json...\n";
    return 2;
  }
  Document answers;
  answers.SetObject();
  for (int i = 1; i < argc; ++i) {
    if (!AnswerFile(argv[i], answers)) return 3;
  }
  rapidjson::StringBuffer buffer;
  rapidjson::Writer<rapidjson::StringBuffer> writer(buffer);  // shortest digits that read back the same double
  answers.Accept(writer);
  std::cout << buffer.GetString() << "\n";
  return 0;
}
