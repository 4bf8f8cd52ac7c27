package org.scrubline.committee.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.committee.ActKind;
import org.scrubline.committee.Duties;
import org.scrubline.committee.Suspensions.Gap;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.entitlement.EntitlementWords;
import org.scrubline.entitlement.Entitlements;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.springframework.stereotype.Component;

/** Says what waits after decisions. */
@Component
class DutyPages {

    private final Entitlements entitlements;
    private final EntitlementWords entitlementWords;
    private final People people;
    private final CommitteeWords words;

    DutyPages(Entitlements entitlements, EntitlementWords entitlementWords, People people, CommitteeWords words) {
        this.entitlements = entitlements;
        this.entitlementWords = entitlementWords;
        this.people = people;
        this.words = words;
    }

    static String act(UUID programme, UUID trainee, Family family, ActKind kind) {
        return "/entitlements/" + programme + "/" + trainee + "/" + family + "/"
                + (kind == ActKind.SUSPENDED ? "suspend" : "reinstate");
    }

    DutyPage of(SignedIn who, Duties.OfProgramme one) {
        boolean directs = who.has(Role.DIRECTOR, one.programme().id());
        return new DutyPage(
                one.programme().name(),
                directs,
                one.letters().stream().map(letter -> letter(letter, directs)).toList(),
                one.appeals().stream()
                        .map(appeal -> new Link(
                                Links.decision(appeal.decisionId()),
                                words.say(
                                        "committee.due.appeal", appeal.trainee().printedName()),
                                words.say(
                                        "committee.due.appeal.since",
                                        words.day(appeal.since()),
                                        words.say("committee.state." + appeal.state())),
                                null))
                        .toList(),
                one.reviews().stream()
                        .map(review -> line(review.trainee(), review.entitlement(), "committee.due.review"))
                        .toList(),
                one.gaps().stream().map(this::gap).toList(),
                directs
                        ? entitlements.ofProgramme(one.programme().id()).stream()
                                .filter(Entitlement::suspended)
                                .map(this::suspended)
                                .toList()
                        : List.of());
    }

    private DutyPage.Letter letter(Duties.Letter letter, boolean directs) {
        return new DutyPage.Letter(
                words.say(
                        letter.overdue() ? "committee.due.letter.overdue" : "committee.due.letter",
                        letter.trainee().printedName(),
                        words.day(letter.dueOn())),
                letter.overdue(),
                Links.decision(letter.decisionId()) + "/letter-given",
                directs ? Links.decision(letter.decisionId()) + "/letter" : null);
    }

    private DutyPage.Line line(Person trainee, Entitlement one, String key) {
        return new DutyPage.Line(words.say(key, trainee.printedName(), matter(one), words.day(one.reviewOn())), null);
    }

    private DutyPage.Line gap(Gap gap) {
        Entitlement one = gap.entitlement();
        return new DutyPage.Line(
                words.say("committee.due.gap", gap.trainee().printedName(), matter(one), gap.days()),
                Link.of(
                        act(one.programmeId(), one.traineeId(), one.family(), ActKind.SUSPENDED),
                        words.say("committee.next.SUSPENDED")));
    }

    private DutyPage.Line suspended(Entitlement one) {
        String name = people.person(one.traineeId()).map(Person::printedName).orElse("–");
        return new DutyPage.Line(
                words.say("committee.due.suspended", name, matter(one)),
                Link.of(
                        act(one.programmeId(), one.traineeId(), one.family(), ActKind.REINSTATED),
                        words.say("committee.next.REINSTATED")));
    }

    private String matter(Entitlement one) {
        return words.say(
                "committee.due.matter",
                entitlementWords.family(one.family()),
                entitlementWords.bands(one.bands()),
                entitlementWords.level(one.level()));
    }
}
