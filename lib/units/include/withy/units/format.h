// Numbers and quantities as text, for files and for the bench.
//
//   FormatShortest(0.1)                            // "0.1": reads back as the same double
//   FormatMm(Length::Inches(87), 1)                // "2209.8 mm"
//   FormatFeetInches(Length::Mm(2222.5), 8)        // "7' 3 1/2\""
//   FormatIn64(Length::Mm(2.18))                   // "5.5/64"
//
// Everything here rounds and says how. A zero never has a sign, and a number that is not finite is printed as "?",
// never as a figure. No locale.
#ifndef WITHY_UNITS_FORMAT_H_
#define WITHY_UNITS_FORMAT_H_

#include <string>

#include "withy/units/quantity.h"

namespace withy {

// The shortest decimal text that reads back as the same double ("87", "0.1", "1e+300").
std::string FormatShortest(double number);

// With `decimals` digits after the point, 0 to 17. Rounds the exact binary value to nearest; an exact half goes to the
// even digit (0.125 with two decimals is "0.12").
std::string FormatFixed(double number, int decimals);

// "2209.8 mm", "12.30 g": as FormatFixed, with the unit.
std::string FormatMm(Length length, int decimals);
std::string FormatGrams(Mass mass, int decimals);

// Inches to the nearest 1/denominator (a power of two, 2 to 64: guides are laid out in 1/8, cuts in 1/16), the fraction
// in lowest terms: `87 1/2"`, `3/16"`, `0"`. Half a step is rounded away from zero.
std::string FormatInches(Length length, int denominator);

// The same with feet from one foot on: `7' 3 1/2"`, `7' 0"`, `11 7/8"`, `-1' 2"`.
std::string FormatFeetInches(Length length, int denominator);

// Sixty-fourths of an inch to the nearest half, as tip-top tubes are sold: "5.5/64", "6/64". A quarter is rounded away
// from zero. Never reduced.
std::string FormatIn64(Length length);

}  // namespace withy

#endif  // WITHY_UNITS_FORMAT_H_
