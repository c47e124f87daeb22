// The test program is also the child that its plugins run in.
#include <gtest/gtest.h>

#include "withy/plugin_host/plugin_host.h"

int main(int argc, char** argv) {
  int exit_status = 0;
  if (withy::RunPluginChildIfAsked(argc, argv, &exit_status)) return exit_status;
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
