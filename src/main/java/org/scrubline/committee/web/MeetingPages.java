package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Meeting;
import org.scrubline.committee.MeetingState;
import org.scrubline.committee.Meetings;
import org.scrubline.committee.Packs;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Makes the pages about meetings. */
@Component
class MeetingPages {

    private final Meetings meetings;
    private final Packs packs;
    private final Decisions decisions;
    private final DecisionWords decisionWords;
    private final People people;
    private final CommitteeWords words;

    MeetingPages(
            Meetings meetings,
            Packs packs,
            Decisions decisions,
            DecisionWords decisionWords,
            People people,
            CommitteeWords words) {
        this.meetings = meetings;
        this.packs = packs;
        this.decisions = decisions;
        this.decisionWords = decisionWords;
        this.people = people;
        this.words = words;
    }

    List<Link> list(List<Meeting> all) {
        return all.stream()
                .map(meeting -> new Link(
                        Links.meeting(meeting.id()),
                        title(meeting),
                        words.say(
                                "committee.meeting.line",
                                state(meeting),
                                people.programme(meeting.programmeId()).name(),
                                meeting.trainees().stream()
                                        .map(Person::printedName)
                                        .collect(Collectors.joining(", "))),
                        Integer.toString(meeting.trainees().size())))
                .toList();
    }

    List<Link> plans(List<Programme> programmes) {
        return programmes.stream()
                .map(programme -> Link.of(
                        "/meetings/new?programme=" + programme.id(),
                        words.say("committee.meeting.plan", programme.name())))
                .toList();
    }

    PlanPage plan(
            Programme programme, List<Person> members, List<Person> trainees, Typed typed, List<Refusal> reasons) {
        return new PlanPage(
                programme.id().toString(),
                programme.name(),
                options(members),
                options(trainees),
                typed.all("members"),
                typed.all("trainees"),
                new FormView(typed.shown(), words.errors(reasons)));
    }

    MeetingPage of(SignedIn who, Meeting meeting, Typed typed, List<Refusal> reasons) {
        boolean runs = runs(who, meeting);
        boolean office = office(who, meeting);
        boolean ahead = meeting.state().ahead();
        return new MeetingPage(
                Links.meeting(meeting.id()),
                title(meeting),
                facts(meeting),
                next(who, meeting),
                meeting.members().stream()
                        .map(member -> member(meeting, member))
                        .toList(),
                meeting.state() == MeetingState.OPEN && (runs || office)
                        ? options(meeting.members().stream()
                                .map(Meeting.Member::person)
                                .toList())
                        : null,
                meeting.members().stream()
                        .filter(Meeting.Member::present)
                        .map(member -> member.person().id().toString())
                        .toList(),
                ahead && who.has(Role.DIRECTOR, meeting.programmeId())
                        ? options(meeting.members().stream()
                                .map(Meeting.Member::person)
                                .toList())
                        : List.of(),
                trainees(who, meeting),
                conflicts(meeting),
                ahead ? declaring(who, meeting, runs) : List.of(),
                options(meeting.trainees()),
                ahead && office ? rest(meetings.invitable(who, meeting.programmeId()), invited(meeting)) : List.of(),
                ahead && office ? rest(meetings.trainees(who, meeting.programmeId()), meeting.trainees()) : List.of(),
                decisions(who, meeting),
                new FormView(typed.shown(), words.errors(reasons)));
    }

    private String title(Meeting meeting) {
        return words.say("committee.meeting.title", words.at(meeting.plannedAt(), zone(meeting)));
    }

    private String state(Meeting meeting) {
        return words.say("committee.meeting.state." + meeting.state());
    }

    private List<Fact> facts(Meeting meeting) {
        return List.of(
                new Fact(state(meeting), null),
                new Fact(people.programme(meeting.programmeId()).name(), null),
                new Fact(Integer.toString(meeting.members().size()), words.say("committee.meeting.invited")));
    }

    private List<Option> next(SignedIn who, Meeting meeting) {
        List<MeetingState> next = new ArrayList<>();
        if (meeting.state() == MeetingState.PLANNED && runs(who, meeting)) {
            next.add(MeetingState.OPEN);
        }
        if (meeting.state() == MeetingState.OPEN && runs(who, meeting)) {
            next.add(MeetingState.CLOSED);
        }
        if (meeting.state() == MeetingState.PLANNED && office(who, meeting)) {
            next.add(MeetingState.CANCELLED);
        }
        return next.stream()
                .map(state -> Option.of(state, words.say("committee.meeting.move." + state)))
                .toList();
    }

    private MeetingPage.Member member(Meeting meeting, Meeting.Member member) {
        String role = words.say(
                member.person().id().equals(meeting.chairId()) ? "committee.member.chair" : "committee.member");
        return new MeetingPage.Member(
                member.person().printedName(),
                meeting.state() == MeetingState.PLANNED || meeting.state() == MeetingState.CANCELLED
                        ? role
                        : words.say(
                                "committee.member.presence",
                                role,
                                words.say(member.present() ? "committee.present" : "committee.absent")));
    }

    private List<MeetingPage.Trainee> trainees(SignedIn who, Meeting meeting) {
        Map<UUID, Packs.Frozen> frozen = packs.frozen(who, meeting.id()).stream()
                .collect(Collectors.toMap(Packs.Frozen::traineeId, Function.identity()));
        boolean freezes = meeting.state().ahead()
                && (office(who, meeting) || meeting.chairId().equals(who.personId()));
        return meeting.trainees().stream()
                .map(trainee -> {
                    Packs.Frozen one = frozen.get(trainee.id());
                    return new MeetingPage.Trainee(
                            trainee.printedName(),
                            one == null
                                    ? words.say("committee.frozen.not")
                                    : words.say("committee.frozen", words.at(one.cutOff(), zone(meeting))),
                            one == null ? null : evidence(who, meeting, trainee),
                            one == null && freezes ? Links.evidence(meeting.id(), trainee.id()) + "/freeze" : null);
                })
                .toList();
    }

    private @Nullable Link evidence(SignedIn who, Meeting meeting, Person trainee) {
        UUID programme = meeting.programmeId();
        boolean reads = (who.has(Role.DIRECTOR, programme) || who.has(Role.COMMITTEE_MEMBER, programme))
                && !who.personId().equals(trainee.id());
        return reads
                ? Link.of(
                        Links.evidence(meeting.id(), trainee.id()),
                        words.say("committee.evidence.open", trainee.printedName()))
                : null;
    }

    private List<String> conflicts(Meeting meeting) {
        return meeting.conflicts().stream()
                .map(one -> words.say(
                        "committee.conflict.line",
                        meeting.member(one.memberId()).orElseThrow().person().printedName(),
                        meeting.trainee(one.traineeId())
                                .map(Person::printedName)
                                .orElse("–"),
                        one.reason(),
                        words.at(one.declaredAt(), zone(meeting))))
                .toList();
    }

    private List<Option> declaring(SignedIn who, Meeting meeting, boolean runs) {
        return options(invited(meeting).stream()
                .filter(person -> runs || person.id().equals(who.personId()))
                .toList());
    }

    private List<Link> decisions(SignedIn who, Meeting meeting) {
        return decisions.ofMeeting(who, meeting.id()).stream()
                .map(decision -> new Link(
                        Links.decision(decision.id()),
                        decisionWords.title(decision.content()),
                        decisionWords.answer(decision.content()),
                        null))
                .toList();
    }

    private static List<Person> invited(Meeting meeting) {
        return meeting.members().stream().map(Meeting.Member::person).toList();
    }

    private static List<Option> rest(List<Person> all, List<Person> there) {
        return options(Stream.of(all)
                .flatMap(List::stream)
                .filter(person -> there.stream().noneMatch(one -> one.id().equals(person.id())))
                .toList());
    }

    static List<Option> options(List<Person> persons) {
        return persons.stream()
                .map(person -> Option.of(person.id(), person.printedName()))
                .toList();
    }

    private static boolean runs(SignedIn who, Meeting meeting) {
        return meeting.chairId().equals(who.personId()) || who.has(Role.DIRECTOR, meeting.programmeId());
    }

    private static boolean office(SignedIn who, Meeting meeting) {
        return who.has(Role.DIRECTOR, meeting.programmeId()) || who.has(Role.ADMINISTRATOR, meeting.programmeId());
    }

    private ZoneId zone(Meeting meeting) {
        return people.programme(meeting.programmeId()).zone();
    }
}
