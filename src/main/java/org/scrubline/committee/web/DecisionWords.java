package org.scrubline.committee.web;

import java.util.List;
import org.scrubline.committee.Ballot;
import org.scrubline.committee.DecisionContent;
import org.scrubline.committee.DecisionContent.Ballotting;
import org.scrubline.committee.Vote;
import org.scrubline.entitlement.Bands;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.entitlement.EntitlementWords;
import org.springframework.stereotype.Component;

/** Says what a decision says. */
@Component
class DecisionWords {

    private final EntitlementWords entitlements;
    private final LevelViews levels;
    private final CommitteeWords words;

    DecisionWords(EntitlementWords entitlements, LevelViews levels, CommitteeWords words) {
        this.entitlements = entitlements;
        this.levels = levels;
        this.words = words;
    }

    /** Whom and what it is about. */
    String title(DecisionContent content) {
        return words.say("committee.decision.title", content.trainee().name(), matter(content));
    }

    String family(DecisionContent content) {
        return entitlements.family(content.family());
    }

    /** The family and bands. */
    String matter(DecisionContent content) {
        return words.say(
                "committee.matter",
                entitlements.family(content.family()),
                entitlements.bands(Bands.read(content.bands())));
    }

    /** What was decided. */
    String answer(DecisionContent content) {
        EntitlementLevel level = content.level();
        return level == null
                ? words.say("committee.decided.insufficient")
                : words.say("committee.decided.level", entitlements.level(level));
    }

    String meaning(DecisionContent content) {
        EntitlementLevel level = content.level();
        return level == null ? words.say("committee.decided.insufficient.means") : words.say(level.meaningKey());
    }

    /** What the evidence said, a sentence a level. */
    List<String> evidence(DecisionContent content) {
        return content.evidence().stream()
                .map(said -> words.say(
                        "committee.said",
                        entitlements.level(EntitlementLevel.valueOf(said.level())),
                        levels.answer(said.answer())))
                .toList();
    }

    String votes(DecisionContent content) {
        return words.say(
                "committee.votes",
                content.votes(Vote.FOR),
                content.votes(Vote.AGAINST),
                content.votes(Vote.ABSTAINED),
                content.quorum());
    }

    /** Each member with presence, vote, bar and cases scored. */
    List<String> members(DecisionContent content) {
        return content.members().stream().map(this::member).toList();
    }

    private String member(Ballotting member) {
        String part = member.vote() != null
                ? words.say("committee.vote." + member.vote())
                : words.say(member.present() ? "committee.present" : "committee.absent");
        String bar = member.bar() == null
                ? ""
                : ", " + words.say("committee.bar." + member.bar())
                        + (member.declared() == null ? "" : " (" + member.declared() + ")");
        return words.say("committee.member.line", member.person().name(), part + bar + scored(member.scored()));
    }

    /** The same for somebody who may vote now. */
    String voter(Ballot.Voter voter) {
        return voter.bar() == null
                ? words.say("committee.member.line", voter.name(), votes(voter) + scored(voter.scored()))
                : words.say(
                        "committee.member.line",
                        voter.name(),
                        words.say("committee.bar." + voter.bar()) + scored(voter.scored()));
    }

    private String votes(Ballot.Voter voter) {
        return words.say(voter.present() ? "committee.present" : "committee.absent");
    }

    private String scored(int cases) {
        return cases == 0 ? "" : ", " + words.say("committee.scored", cases);
    }

    /** Which lines of the checklist are not met yet, as what would change a decision. */
    List<String> unmet(EvidencePage.LevelView level) {
        return level.asks().stream()
                .filter(ask -> !ask.met())
                .map(ask -> ask.asks() + " " + words.say("committee.there", ask.there()))
                .toList();
    }
}
