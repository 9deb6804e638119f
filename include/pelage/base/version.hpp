// Which pelage this is. The number stands here and nowhere else: CMakeLists.txt reads these three lines, and
// all else that says a version follows it. What may change with which is in DEVELOPERS.md, under "A release".
#pragma once

#define PELAGE_VERSION_MAJOR 0
#define PELAGE_VERSION_MINOR 1
#define PELAGE_VERSION_PATCH 0

/// To compare in one go: at least 200 is 0.2.0 or later.
#define PELAGE_VERSION_NUMBER \
    (PELAGE_VERSION_MAJOR * 10000 + PELAGE_VERSION_MINOR * 100 + PELAGE_VERSION_PATCH)
