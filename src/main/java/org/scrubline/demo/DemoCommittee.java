package org.scrubline.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Period;
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
import org.scrubline.demo.plan.DemoCast;
import org.scrubline.demo.plan.DemoPlan;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** The committee's meetings, every half year; at the end of the first for those who leave then. */
@Component
@Profile("demo")
class DemoCommittee {

    private static final Period BEFORE_END = Period.ofDays(9);
    private static final LocalTime MEETS = LocalTime.of(16, 30);
    private static final Duration LETTER_AFTER = Duration.ofDays(2);
    private static final int SOON = 6;
    private static final int NEXT_YEAR = 12;
    private static final List<String> MEMBERS = List.of("quillmere", "delmarr", "brevonne");

    private final Meetings meetings;
    private final Packs packs;
    private final Decisions decisions;
    private final Acts acts;

    DemoCommittee(Meetings meetings, Packs packs, Decisions decisions, Acts acts) {
        this.meetings = meetings;
        this.packs = packs;
        this.decisions = decisions;
        this.acts = acts;
    }

    private record Answer(String trainee, @Nullable EntitlementLevel level, String reasons, String departing) {}

    private static final List<Answer> HALF_YEAR = List.of(
            new Answer(
                    "travard",
                    EntitlementLevel.E1,
                    "Learns fast; parts of a case go well when they are agreed step by step beforehand.",
                    "Half a year is short; the committee also heard the supervisors of the last cases."),
            new Answer(
                    "hallinor",
                    null,
                    "The signed cases of half a year are too few to conclude. Every step should be seen more often.",
                    ""));

    private static final List<Answer> YEAR_ONE = List.of(
            new Answer(
                    "varnholt",
                    EntitlementLevel.E1,
                    "Steady over the year at two places; parts of a case go on as agreed step by step beforehand.",
                    "The critical steps were too seldom at the standard of a whole case; the next programme is told so."),
            new Answer(
                    "tekmor",
                    EntitlementLevel.E1,
                    "The levels have stayed where they were in spring; each case is agreed step by step beforehand.",
                    "The committee wants to see the flow titrated without a cue before the whole case."),
            new Answer(
                    "adelay",
                    null,
                    "Able in what was seen, but most of it was seen by one supervisor. A second place is arranged.",
                    ""));

    private static final List<Answer> YEAR_AND_A_HALF = List.of(
            new Answer(
                    "travard",
                    EntitlementLevel.E2,
                    "Critical steps were steady over the year, at three places and with many supervisors.",
                    "The committee also heard the supervisors of the last cases, who stepped in nowhere."),
            new Answer(
                    "pelgrove",
                    EntitlementLevel.E1,
                    "Back from leave and regaining what was there before; parts of a case go on as agreed beforehand.",
                    "The committee wants to see some months without a break before the whole case."),
            new Answer("ishimar", null, "Half a year in the programme; the signed cases are too few to conclude.", ""));

    private static final List<Answer> YEAR_TWO = List.of(
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
                    "The signed cases are too few to conclude. The open sheets should be scored first.",
                    ""));

    /**
     * One meeting.
     *
     * @param month of the plan at whose end it is
     * @param reviewMonths until each level is looked at again
     * @param letters how many of its letters are sent; the others are still due
     */
    private record Sitting(int month, List<Answer> answers, int reviewMonths, int letters) {}

    private static final List<Sitting> SITTINGS = List.of(
            new Sitting(6, HALF_YEAR, NEXT_YEAR, HALF_YEAR.size()),
            new Sitting(12, YEAR_ONE, SOON, YEAR_ONE.size()),
            new Sitting(18, YEAR_AND_A_HALF, NEXT_YEAR, YEAR_AND_A_HALF.size()),
            new Sitting(24, YEAR_TWO, SOON, YEAR_TWO.size() - 1));

    void plan(Cast cast, DemoPlan plan, Timeline timeline) {
        for (Sitting sitting : SITTINGS) {
            Instant day = plan.month(sitting.month() + 1)
                    .minus(BEFORE_END)
                    .atTime(MEETS)
                    .atZone(DemoCast.ZONE)
                    .toInstant();
            timeline.at(day, () -> {
                List<Decision> signed = meet(cast, day, sitting);
                timeline.at(
                        day.plus(LETTER_AFTER),
                        () -> signed.subList(0, sitting.letters())
                                .forEach(decision -> acts.sendLetter(cast.member("ormandine"), decision.id())
                                        .orThrow()));
            });
        }
    }

    private List<Decision> meet(Cast cast, Instant day, Sitting sitting) {
        SignedIn chair = cast.member("quillmere");
        List<UUID> members =
                MEMBERS.stream().map(name -> cast.member(name).personId()).toList();
        MeetingPlan plan = new MeetingPlan(
                day,
                members,
                chair.personId(),
                sitting.answers().stream()
                        .map(answer -> cast.member(answer.trainee()).personId())
                        .toList());
        Meeting meeting = meetings.plan(cast.member("delmarr"), cast.programme().id(), plan)
                .orThrow();
        plan.trainees()
                .forEach(trainee -> packs.freeze(cast.member("ormandine"), meeting.id(), trainee)
                        .orThrow());
        meetings.move(chair, meeting.id(), MeetingState.OPEN).orThrow();
        meetings.presence(chair, meeting.id(), Set.copyOf(members)).orThrow();
        LocalDate review = LocalDate.ofInstant(day, DemoCast.ZONE).plusMonths(sitting.reviewMonths());
        List<Decision> signed = sitting.answers().stream()
                .map(answer -> decide(cast, meeting, answer, review))
                .toList();
        meetings.move(chair, meeting.id(), MeetingState.CLOSED).orThrow();
        return signed;
    }

    private Decision decide(Cast cast, Meeting meeting, Answer answer, LocalDate review) {
        SignedIn chair = cast.member("quillmere");
        UUID trainee = cast.member(answer.trainee()).personId();
        Map<UUID, Vote> votes = decisions.ballot(chair, meeting.id(), trainee).voting().stream()
                .collect(Collectors.toMap(voter -> voter.id(), voter -> Vote.FOR));
        DecisionDraft draft = new DecisionDraft(
                Family.TRABECULECTOMY,
                Set.of(Band.A, Band.B),
                true,
                answer.level(),
                review,
                answer.reasons(),
                answer.departing(),
                "",
                votes);
        decisions.write(chair, meeting.id(), trainee, draft).orThrow();
        return decisions.signWithoutCredential(chair, meeting.id(), trainee).orThrow();
    }
}
