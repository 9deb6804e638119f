// The owner's page: what is agreed and signed, in an owner's words.
#include "answers/owner_view.hpp"
#include "answers/words/consent.hpp"

namespace pelage::io {

namespace {

class consent_part : owner_view {
  public:
    explicit consent_part(const owner_view& v) : owner_view(v) {}

    void say() {
        strings agreed;
        strings open;
        for (const consent& c : g_.consents) {
            (c.given ? agreed : open).push_back(plainly(c));
        }
        if (!agreed.empty()) {
            add("You have agreed to this").lines = agreed;
        }
        if (open.empty()) {
            if (m_.moment == owner_moment::before) {
                add("Please read and sign")
                    .says.emplace_back(agreed.empty()
                                           ? "This is what we will do."
                                           : "This is what we will do, with what you agreed to.");
                page_.sign = true;
            }
            return;
        }
        page_section& s = add("Please read and sign");
        s.how = lines_as::boxes;
        s.lines = open;
        s.says.emplace_back(
            "Tick what you agree to. No is fine: we find another way. We stop if it "
            "hurts.");
        page_.sign = true;
    }

  private:
    [[nodiscard]] std::string plainly(const consent& c) const {
        if (c.id == "clip-down") {
            const std::string all = shorter_by_mats(g_, plain_);
            const std::string where = may_keep_long(m_) ? shorter_by_mats(g_, plain_, true) : all;
            const std::string more =
                where == all ? ""
                             : "; if the sound hair comes down too, as you choose above: " + all;
            return "Mats may be clipped off short. " +
                   (where.empty()
                        ? ""
                        : "These come out shorter than you asked: " + where + more + ". ") +
                   "Skin under mats can be red, bruised or sore "
                   "and may get a nick. Sores can come to light. The dog may feel odd for a "
                   "while." +
                   (bares_double_coat(g_)
                        ? " The thick coat may grow back slow, patchy or not the same."
                        : "");
        }
        if (c.id == "frail-dog") {
            return std::string(only_with_young(r_.patient)
                                   ? "My dog is pregnant or has puppies to feed."
                                   : "My dog is old, ill or has thin skin.") +
                   " It may tire or get hurt more easily. "
                   "You stop when it has had enough, even if the groom is not done.";
        }
        if (c.id == "show-blades") {
            return "You may use very short blades on the face and feet. The skin may get red.";
        }
        if (c.id == "sun-short") {
            return "My dog is out in the sun most of the day. Where its skin is pale it may burn "
                   "under short hair. You may cut it so short all the same. If not, we leave it " +
                   show(r_.rules.refusal.sun_length.best, o_.units) + " there.";
        }
        if (c.id == "clip-jacket") {
            const bool doubled = double_coated(coat_.id);
            return doubled
                       ? "You may clip the thick coat. It may grow back slow, patchy or not the "
                         "same."
                       : "You may clip the coat and not strip it by hand. It may turn soft "
                         "and pale, and stay so.";
        }
        return sentence_case(consent_words(c, g_, r_)) + ".";
    }
};

}  // namespace

void say_consents(const owner_view& v) {
    consent_part(v).say();
}

}  // namespace pelage::io
