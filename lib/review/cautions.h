// What to look out for at the bench, one sentence each, printed where it matters. Common sense of the trade, no source;
// the product's data sheet, the blank's rating and the rules of the place come before any of them.
#ifndef WITHY_REVIEW_CAUTIONS_H_
#define WITHY_REVIEW_CAUTIONS_H_

#include <string_view>

namespace withy::caution {

inline constexpr std::string_view kWarranty =
    "Cutting or sanding a blank usually ends its warranty: read its maker's terms before cut 1, and look the blank over "
    "for faults while it can still be sent back.";
inline constexpr std::string_view kSaw =
    "Wrap masking tape round the blank at the cut, mark the finished edge on it, and saw on the waste side of the mark, "
    "turning the blank; a fine blade, or an abrasive wheel.";
inline constexpr std::string_view kDust =
    "Dust of carbon and glass fibre harms lungs, eyes and skin: cut and sand wet or with extraction, in a dust mask, "
    "glasses and gloves, away from mains: carbon dust conducts.";
inline constexpr std::string_view kFibres =
    "Abrade the gloss only: where cut fibres show, the blank is weaker there for good.";
inline constexpr std::string_view kEpoxy =
    "Uncured epoxy can make skin allergic for good: nitrile gloves from mixing to clean-up, fresh air, and never solvent "
    "on skin. The product's data sheet comes before every figure here.";
inline constexpr std::string_view kSolvent =
    "Solvent burns, and its vapour runs along the bench: no flame, no spark, fresh air, rags into a closed metal bin.";
inline constexpr std::string_view kExotherm =
    "A large cup heats itself and sets early: keep to the batches, spread what is mixed out flat, and let what is left "
    "harden in the open.";
inline constexpr std::string_view kLead =
    "Lead is poisonous: do not file or melt it, wash your hands, seal it in so that it cannot be lost or chewed, and ask "
    "what the rules of the water and the place say of it.";
inline constexpr std::string_view kHighAngle =
    "A blank lifted at a high angle breaks without warning: stay within its rating, keep the angle of rod and line low, "
    "and wear eye protection when load testing.";
inline constexpr std::string_view kLoadedRod =
    "A loaded rod stores energy: nobody stands in line with it, hooks are off or covered, and the weight hangs on a catch "
    "line. No figure here says that a load is safe.";
inline constexpr std::string_view kRating =
    "None of this says what the finished rod may carry: the blank's rating says that.";

}  // namespace withy::caution

#endif  // WITHY_REVIEW_CAUTIONS_H_
