package org.scrubline.signoff;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Settings;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Whose turn it is in a contest, and who may review one. */
@Component
class ContestRules {

    private final People people;
    private final SignedSheetQueries signed;
    private final Settings settings;
    private final Clock clock;

    ContestRules(People people, SignedSheetQueries signed, Settings settings, Clock clock) {
        this.settings = settings;
        this.people = people;
        this.signed = signed;
        this.clock = clock;
    }

    boolean mayRead(SignedIn who, ContestFile contest) {
        return is(who, contest.trainee())
                || is(who, contest.scorer())
                || isReviewer(who, contest)
                || who.has(Role.DIRECTOR, contest.programmeId())
                || who.has(Role.COMMITTEE_MEMBER, contest.programmeId());
    }

    List<RecordEvent> next(SignedIn who, ContestFile contest) {
        List<RecordEvent> next = new ArrayList<>();
        if (!contest.open()) {
            return next;
        }
        if (mayReply(who, contest) && contest.state() == ContestState.OPEN) {
            next.add(RecordEvent.CONTEST_REPLIED);
        }
        if (mayName(who, contest) && againstNaming(who, contest).isEmpty()) {
            next.add(RecordEvent.REVIEWER_NAMED);
        }
        if (isReviewer(who, contest)) {
            next.add(RecordEvent.CONTEST_UPHELD);
        }
        if (is(who, contest.trainee())) {
            next.add(RecordEvent.CONTEST_WITHDRAWN);
        }
        return next;
    }

    boolean mayReply(SignedIn who, ContestFile contest) {
        return is(who, contest.scorer());
    }

    boolean mayName(SignedIn who, ContestFile contest) {
        return who.has(Role.DIRECTOR, contest.programmeId())
                && holds(who.personId(), contest.programmeId(), Role.DIRECTOR)
                && !is(who, contest.trainee());
    }

    boolean isReviewer(SignedIn who, ContestFile contest) {
        return contest.reviewer().filter(named -> is(who, named)).isPresent();
    }

    static boolean is(SignedIn who, SheetContent.Named named) {
        return named.id().equals(who.personId());
    }

    /** Why no reviewer can be named yet, or not by this director. */
    Optional<Refusal> againstNaming(SignedIn who, ContestFile contest) {
        if (is(who, contest.scorer())
                && people.holding(contest.programmeId(), Role.DIRECTOR).size() > 1) {
            return Optional.of(Refusal.of("signoff.refusal.own-score"));
        }
        Duration replyWithin = settings.of(contest.programmeId()).contestReply();
        boolean waited = Duration.between(opened(contest), clock.instant()).compareTo(replyWithin) > 0;
        boolean there = holds(contest.scorer().id(), contest.programmeId(), Role.SUPERVISOR);
        boolean replied = contest.said(RecordEvent.CONTEST_REPLIED).isPresent();
        return replied || waited || !there
                ? Optional.empty()
                : Optional.of(Refusal.of("signoff.refusal.reply-first", replyWithin.toDays()));
    }

    private static Instant opened(ContestFile contest) {
        return contest.opened().content().signedAt();
    }

    /** Why this reviewer may not decide any more, if something changed since the naming. */
    Optional<Refusal> againstReviewer(SignedIn who, ContestFile contest) {
        boolean fit = fit(contest).stream().anyMatch(person -> person.id().equals(who.personId()));
        return fit ? Optional.empty() : Optional.of(Refusal.of("signoff.refusal.reviewer"));
    }

    /** Whom this director may name. */
    List<Person> reviewers(SignedIn director, ContestFile contest) {
        return fit(contest).stream()
                .filter(person -> !person.id().equals(director.personId()))
                .toList();
    }

    /** Supervisors who are not the trainee, signed no version, and have no declared conflict with trainee or scorer. */
    private List<Person> fit(ContestFile contest) {
        UUID trainee = contest.trainee().id();
        UUID scorer = contest.scorer().id();
        Set<UUID> parts = signed.versions(contest.sheetId()).stream()
                .map(SignedSheet::signerId)
                .collect(Collectors.toSet());
        return people.holding(contest.programmeId(), Role.SUPERVISOR).stream()
                .filter(person -> !person.id().equals(trainee) && !parts.contains(person.id()))
                .filter(person -> !people.inConflict(person.id(), trainee) && !people.inConflict(person.id(), scorer))
                .toList();
    }

    private boolean holds(UUID person, UUID programme, Role role) {
        return people.holding(programme, role).stream().anyMatch(one -> one.id().equals(person));
    }
}
