package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.Acts;
import org.scrubline.committee.Decision;
import org.scrubline.committee.DecisionDraft;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Meeting;
import org.scrubline.committee.MeetingPlan;
import org.scrubline.committee.MeetingState;
import org.scrubline.committee.Meetings;
import org.scrubline.committee.Packs;
import org.scrubline.committee.Vote;
import org.scrubline.demo.DemoPeople.Cast;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** One committee meeting with three decisions; two of the letters are given, one is due. */
@Component
@Profile("demo")
class DemoCommittee {

    private static final Duration AGO = Duration.ofDays(9);
    private static final int REVIEW_MONTHS = 6;
    private static final List<String> MEMBERS = List.of("quillmere", "delmarr", "brevonne");

    private final Meetings meetings;
    private final Packs packs;
    private final Decisions decisions;
    private final Acts acts;
    private final ScrublineClock clock;

    DemoCommittee(Meetings meetings, Packs packs, Decisions decisions, Acts acts, ScrublineClock clock) {
        this.meetings = meetings;
        this.packs = packs;
        this.decisions = decisions;
        this.acts = acts;
        this.clock = clock;
    }

    private record Answer(String trainee, @Nullable EntitlementLevel level, String reasons, String departing) {}

    private static final List<Answer> ANSWERS = List.of(
            new Answer(
                    "hallinor",
                    EntitlementLevel.E2,
                    "Every critical step was seen often and by several supervisors, and the last cases were safe.",
                    "The committee also heard the supervisors of the last cases, who saw every step done unaided."),
            new Answer(
                    "nkolaris",
                    EntitlementLevel.E1,
                    "The flap and the ostium are the steps to work on; the other steps go on as agreed before each case.",
                    "The committee wants to see both steps once more before the whole case."),
            new Answer(
                    "draymoor",
                    null,
                    "Three signed cases are too few to conclude. The open sheets should be scored first.",
                    ""));

    /** Works in the tenant scope of the demo organisation, as of a meeting some days ago. */
    void decide(Cast cast) {
        Instant day = clock.instant().minus(AGO);
        List<Decision> signed = clock.at(day, () -> meet(cast, day));
        clock.at(
                day.plus(Duration.ofDays(2)),
                () -> signed.subList(0, 2).stream()
                        .map(decision -> acts.sendLetter(cast.member("ormandine"), decision.id())
                                .orThrow())
                        .toList());
    }

    private List<Decision> meet(Cast cast, Instant day) {
        SignedIn chair = cast.member("quillmere");
        List<UUID> members =
                MEMBERS.stream().map(name -> cast.member(name).personId()).toList();
        MeetingPlan plan = new MeetingPlan(
                day,
                members,
                chair.personId(),
                ANSWERS.stream()
                        .map(answer -> cast.member(answer.trainee()).personId())
                        .toList());
        Meeting meeting = meetings.plan(cast.member("delmarr"), cast.programme().id(), plan)
                .orThrow();
        plan.trainees()
                .forEach(trainee -> packs.freeze(cast.member("ormandine"), meeting.id(), trainee)
                        .orThrow());
        meetings.move(chair, meeting.id(), MeetingState.OPEN).orThrow();
        meetings.presence(chair, meeting.id(), Set.copyOf(members)).orThrow();
        List<Decision> signed = ANSWERS.stream()
                .map(answer -> decide(cast, meeting, answer, day))
                .toList();
        meetings.move(chair, meeting.id(), MeetingState.CLOSED).orThrow();
        return signed;
    }

    private Decision decide(Cast cast, Meeting meeting, Answer answer, Instant day) {
        SignedIn chair = cast.member("quillmere");
        UUID trainee = cast.member(answer.trainee()).personId();
        Map<UUID, Vote> votes = decisions.ballot(chair, meeting.id(), trainee).voting().stream()
                .collect(Collectors.toMap(voter -> voter.id(), voter -> Vote.FOR));
        DecisionDraft draft = new DecisionDraft(
                Family.TRABECULECTOMY,
                Set.of(Band.A, Band.B),
                true,
                answer.level(),
                LocalDate.ofInstant(day, ZoneId.of(DemoCast.ZONE)).plusMonths(REVIEW_MONTHS),
                answer.reasons(),
                answer.departing(),
                "",
                votes);
        decisions.write(chair, meeting.id(), trainee, draft).orThrow();
        return decisions.signWithoutCredential(chair, meeting.id(), trainee).orThrow();
    }
}
