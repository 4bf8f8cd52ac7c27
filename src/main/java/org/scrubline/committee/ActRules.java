package org.scrubline.committee;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scrubline.committee.DecisionFile.Appeal;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.Settings;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** Whose turn it is after a decision, and what stands against it. */
@Component
class ActRules {

    private final CommitteeAccess access;
    private final People people;
    private final Settings settings;
    private final Clock clock;

    ActRules(CommitteeAccess access, People people, Settings settings, Clock clock) {
        this.access = access;
        this.people = people;
        this.settings = settings;
        this.clock = clock;
    }

    /** Whether a deed is this person's to do at all, whatever stands against it today. */
    boolean mayDo(SignedIn who, DecisionFile file, ActKind kind) {
        UUID programme = file.decision().programmeId();
        UUID trainee = file.decision().traineeId();
        boolean self = who.personId().equals(trainee);
        return switch (kind) {
            case LETTER_SENT ->
                !self
                        && (access.directsOrAdministers(who, programme)
                                || file.decision().content().signer().id().equals(who.personId()));
            case APPEALED, APPEAL_ENDED -> self;
            case PANEL_NAMED -> !self && access.directs(who, programme);
            case APPEAL_UPHELD, APPEAL_NOT_UPHELD -> !self && file.hears(who.personId());
            case SUSPENDED, REINSTATED -> false;
        };
    }

    /** What stands against it now. */
    Optional<Refusal> against(DecisionFile file, ActKind kind) {
        Appeal appeal = file.appeal();
        return switch (kind) {
            case APPEALED -> againstAppeal(file);
            case PANEL_NAMED -> unless(appeal.waits(), "committee.refusal.no-appeal");
            case APPEAL_UPHELD, APPEAL_NOT_UPHELD -> unless(appeal == Appeal.HEARD, "committee.refusal.not-heard");
            case APPEAL_ENDED -> unless(appeal.waits(), "committee.refusal.no-appeal");
            case LETTER_SENT -> unless(file.letter().isEmpty(), "committee.refusal.letter-given");
            case SUSPENDED, REINSTATED -> Optional.of(Refusal.of("committee.refusal.over"));
        };
    }

    private Optional<Refusal> againstAppeal(DecisionFile file) {
        if (file.appeal() != Appeal.NONE) {
            return Optional.of(Refusal.of("committee.refusal.appeal-once"));
        }
        Instant now = clock.instant();
        return file.appealUntil().filter(now::isAfter).isPresent()
                ? Optional.of(Refusal.of("committee.refusal.appeal-late"))
                : Optional.empty();
    }

    private static Optional<Refusal> unless(boolean fine, String key) {
        return fine ? Optional.empty() : Optional.of(Refusal.of(key));
    }

    /** What is wrong with the words of a statement. */
    static Optional<Refusal> words(ActKind kind, String text) {
        boolean needed = kind == ActKind.APPEALED
                || kind == ActKind.APPEAL_UPHELD
                || kind == ActKind.APPEAL_NOT_UPHELD
                || kind == ActKind.SUSPENDED
                || kind == ActKind.REINSTATED;
        return needed ? DecisionRules.reason("reason", text) : FreeText.check("reason", text, Decisions.LONGEST_TEXT);
    }

    List<Person> hearers(DecisionFile file) {
        Set<UUID> part = file.decision().content().members().stream()
                .filter(member -> member.present() || member.vote() != null)
                .map(member -> member.person().id())
                .collect(Collectors.toSet());
        part.add(file.decision().content().signer().id());
        UUID trainee = file.decision().traineeId();
        return candidates(file.decision().programmeId())
                .distinct()
                .filter(person -> !part.contains(person.id()) && !person.id().equals(trainee))
                .filter(person -> !people.inConflict(person.id(), trainee))
                .sorted(Comparator.comparing(Person::printedName).thenComparing(Person::id))
                .toList();
    }

    private Stream<Person> candidates(UUID programme) {
        Stream<Person> committees = people.programmes().stream()
                .map(Programme::id)
                .flatMap(id -> Stream.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER)
                        .flatMap(role -> people.holding(id, role).stream()));
        return Stream.concat(committees, people.holding(programme, Role.SUPERVISOR).stream());
    }

    Optional<Refusal> panel(DecisionFile file, List<UUID> persons) {
        int quorum = settings.of(file.decision().programmeId()).quorum();
        Set<UUID> able = hearers(file).stream().map(Person::id).collect(Collectors.toSet());
        if (!able.containsAll(persons)) {
            return Optional.of(Refusal.at("persons", "committee.refusal.panel-who"));
        }
        return persons.stream().distinct().count() < quorum
                ? Optional.of(Refusal.at("persons", "committee.refusal.panel-few", quorum))
                : Optional.empty();
    }

    /** What this person may do now, in the order of events. */
    List<ActKind> next(SignedIn who, DecisionFile file) {
        List<ActKind> next = new ArrayList<>();
        for (ActKind kind : ActKind.values()) {
            if (mayDo(who, file, kind) && against(file, kind).isEmpty()) {
                next.add(kind);
            }
        }
        return next;
    }
}
