// The front door: a salon, what can be asked of it, and the answers.
//
//     const auto salon = pelage::salon::embedded();
//     std::cout << pelage::text(salon.plan(salon.dog("biscuit")));
//
// The library never asks what day it is: today is an option. Each room's own headers stay there for who
// needs more; <pelage/planner/plan.hpp> plans without files and without a salon.
#pragma once

#include <pelage/front/answers.hpp>
#include <pelage/front/salon.hpp>
#include <pelage/front/values.hpp>
