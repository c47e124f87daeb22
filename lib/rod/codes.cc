#include "codes.h"

#include "log_codes.h"
#include "withy/rod/rod.h"

namespace withy {

std::vector<Code> RodCodes() {
  return {kEntryNotUnderstood,
          kCorrectionNotOfEarlier,
          kNoBlank,
          kPlaceCycle,
          kPlaceAmbiguous,
          kMeasurementsDiffer,
          kNothingLeft,
          kCutBeyondPlan,
          kBroken,
          kTooManyThings,
          kDryFitStale,
          kCutAgainstFits,
          kRestUnknown,
          kJointMissing,
          kFitTooLong,
          kFitTooShort,
          kAfterGlueUp,
          kPlanClosed,
          kGluedUntried,
          kRemovedNotOn,
          kRingOrder,
          kBoreWiderThanPart,
          kCavityAgainstBore,
          kCounterweightUnit,
          kEntryEmpty,
          kGluedTwice,
          kGluedBroken,
          kFitNotUsed,
          kWeighingNotUsed,
          kPointOffRod};
}

}  // namespace withy
