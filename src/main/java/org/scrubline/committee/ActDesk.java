package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.committee.ActWriter.Saying;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SheetContent.Named;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes what is said after a decision, one transaction each. Whoever calls has recognised the signer. */
@Service
@Transactional
class ActDesk {

    private final DecisionQueries decisions;
    private final DecisionStore lock;
    private final DecisionReading reading;
    private final ActRules rules;
    private final ActWriter writer;
    private final Signers signers;
    private final Settings settings;
    private final People people;

    ActDesk(
            DecisionQueries decisions,
            DecisionStore lock,
            DecisionReading reading,
            ActRules rules,
            ActWriter writer,
            Signers signers,
            Settings settings,
            People people) {
        this.decisions = decisions;
        this.lock = lock;
        this.reading = reading;
        this.rules = rules;
        this.writer = writer;
        this.signers = signers;
        this.settings = settings;
        this.people = people;
    }

    /** Answers {@code NotFound} to anyone whose deed it is not. */
    @Transactional(readOnly = true)
    public void recognise(SignedIn who, UUID decisionId, ActKind kind) {
        require(rules.mayDo(who, file(decisionId), kind));
    }

    public Attempt<Act> letter(SignedIn who, UUID decisionId) {
        DecisionFile file = held(who, decisionId, ActKind.LETTER_SENT);
        if (file.letter().isPresent()) {
            return Attempt.done(file.letter().get());
        }
        UUID programme = file.decision().programmeId();
        Instant until = writer.now().plus(settings.of(programme).appealWithin());
        Role role = who.has(Role.ADMINISTRATOR, programme) && !who.has(Role.DIRECTOR, programme)
                ? Role.ADMINISTRATOR
                : Signers.role(who, programme);
        return Attempt.done(
                writer.about(who, file.decision(), new Saying(ActKind.LETTER_SENT, role, List.of(), until, "", false)));
    }

    public Attempt<Act> say(SignedIn who, UUID decisionId, ActKind kind, String text) {
        DecisionFile file = held(who, decisionId, kind);
        String words = FreeText.tidy(text);
        Optional<Act> before = same(file, who, kind, words);
        return before.map(Attempt::done)
                .orElseGet(() -> refusal(who, file, kind, words)
                        .map(Attempt::<Act>refused)
                        .orElseGet(() -> Attempt.done(
                                writer.about(who, file.decision(), Saying.of(kind, role(who, file, kind), words)))));
    }

    public Attempt<Act> panel(SignedIn who, UUID decisionId, List<UUID> persons, String text) {
        DecisionFile file = held(who, decisionId, ActKind.PANEL_NAMED);
        String words = FreeText.tidy(text);
        Optional<Refusal> refused =
                refusal(who, file, ActKind.PANEL_NAMED, words).or(() -> rules.panel(file, persons));
        if (refused.isPresent()) {
            return Attempt.refused(refused.get());
        }
        List<Named> named = persons.stream()
                .distinct()
                .map(id -> people.person(id).orElseThrow(NotFound::new))
                .map(person -> new Named(person.id(), person.printedName()))
                .toList();
        return Attempt.done(writer.about(
                who, file.decision(), new Saying(ActKind.PANEL_NAMED, Role.DIRECTOR, named, null, words, true)));
    }

    @Transactional(readOnly = true)
    public List<Person> hearers(SignedIn who, UUID decisionId) {
        DecisionFile file = file(decisionId);
        require(rules.mayDo(who, file, ActKind.PANEL_NAMED));
        return rules.hearers(file);
    }

    private Optional<Refusal> refusal(SignedIn who, DecisionFile file, ActKind kind, String words) {
        return signers.standing(who.personId())
                .or(() -> rules.against(file, kind))
                .or(() -> ActRules.words(kind, words));
    }

    /** The same said twice, as by a second tap, is one statement. */
    private static Optional<Act> same(DecisionFile file, SignedIn who, ActKind kind, String words) {
        return file.said(kind)
                .filter(act -> act.content().signer().id().equals(who.personId()))
                .filter(act -> act.content().text().equals(words));
    }

    private static Role role(SignedIn who, DecisionFile file, ActKind kind) {
        UUID programme = file.decision().programmeId();
        if (kind == ActKind.APPEALED || kind == ActKind.APPEAL_ENDED) {
            return Role.TRAINEE;
        }
        return who.has(Role.SUPERVISOR, programme) ? Role.SUPERVISOR : Signers.role(who, programme);
    }

    private DecisionFile held(SignedIn who, UUID decisionId, ActKind kind) {
        Decision decision = decisions.byId(decisionId).orElseThrow(NotFound::new);
        lock.lock(decision.traineeId());
        DecisionFile file = reading.file(decision);
        require(rules.mayDo(who, file, kind));
        return file;
    }

    private DecisionFile file(UUID decisionId) {
        return reading.file(decisions.byId(decisionId).orElseThrow(NotFound::new));
    }
}
