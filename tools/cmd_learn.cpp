#include <pelage/growth_record.hpp>
#include <pelage/io/read.hpp>
#include <pelage/io/write.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

/// What only makes sense of one dog.
void refuse_a_dog(const request& q, faults& f) {
    const bool of_a_dog = !q.operands.empty() || !q.coat.empty() || !q.style.empty() ||
                          !q.size.empty() || !q.length.empty() || !q.brush.empty() ||
                          !q.chance.empty() || !q.now.empty() || !q.consents.empty();
    if (of_a_dog) {
        f.say(errc::usage, "--learn looks at all dogs of a salon; found " +
                               (q.operands.empty() ? std::string("an option for one dog")
                                                   : "the dog \"" + q.operands.front() + "\"") +
                               " too; leave one out");
    }
}

}  // namespace

reply learn(const request& q, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(q, around, f);
    refuse_a_dog(q, f);
    f.throw_if_any();
    std::vector<io::unsound_file> unsound;
    const salon s = salon_at(q.learn, w.reference, around, unsound);
    const auto lessons = learn_herds(s, w.reference, w.print.today);
    return {w.json ? io::proposal_json(lessons, s.rules.growth)
                   : io::proposal_text(lessons, s.rules.growth, q.learn, w.print)};
}

}  // namespace pelage::cli
