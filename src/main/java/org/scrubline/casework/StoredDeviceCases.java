package org.scrubline.casework;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.CaseReceipt.Aside;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredDeviceCases implements DeviceCases {

    private final CaseSubmissionStore store;
    private final Cases cases;
    private final SelfScores selfScores;
    private final CaseEntryRule rule;
    private final Rubrics rubrics;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredDeviceCases(
            CaseSubmissionStore store,
            Cases cases,
            SelfScores selfScores,
            CaseEntryRule rule,
            Rubrics rubrics,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.cases = cases;
        this.selfScores = selfScores;
        this.rule = rule;
        this.rubrics = rubrics;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Attempt<CaseReceipt> enter(SignedIn who, CaseSubmission sent, CaseEntry entry, Map<String, Integer> levels) {
        store.lock(sent.id());
        Optional<CaseReceipt> before = store.receipts(sent.id(), who.personId()).stream()
                .filter(receipt -> receipt.hash().equals(sent.hash()))
                .findFirst();
        if (before.isPresent()) {
            return Attempt.done(before.get());
        }
        List<Refusal> reasons = new ArrayList<>(cases.against(who, CaseAnswers.of(entry)));
        if (!ownCase(who, entry)) {
            reasons.add(Refusal.of("refusal.case.programme"));
        }
        if (!reasons.contains(Refusal.at("procedure", "refusal.case.procedure")) && !fit(levels, rubric(entry))) {
            reasons.add(Refusal.at("levels", "refusal.self-score.level"));
        }
        return enter(who, sent, entry, levels, reasons);
    }

    /** A device logs its owner's cases alone. */
    private static boolean ownCase(SignedIn who, CaseEntry entry) {
        return entry.traineeId().equals(who.personId());
    }

    private Attempt<CaseReceipt> enter(
            SignedIn who, CaseSubmission sent, CaseEntry entry, Map<String, Integer> levels, List<Refusal> reasons) {
        boolean repeated = store.known(sent.id());
        boolean ahead = rule.ahead(entry.endedAt());
        List<Refusal> toMend = reasons.stream()
                .filter(reason -> !(ahead && reason.field().equals("endedAt")))
                .filter(reason -> !(repeated && reason.messageKey().equals("refusal.case.reference.taken")))
                .toList();
        if (!toMend.isEmpty()) {
            return Attempt.refused(reasons);
        }
        if (repeated || ahead) {
            Aside why = repeated ? Aside.OTHER_CONTENT : Aside.END_AHEAD;
            return Attempt.done(store.add(sent, who.personId(), entry, null, why, now()));
        }
        return log(who, entry, levels)
                .fold(
                        added -> Attempt.done(store.add(sent, who.personId(), entry, added.id(), null, now())),
                        Attempt::refused);
    }

    private Attempt<SurgicalCase> log(SignedIn who, CaseEntry entry, Map<String, Integer> levels) {
        Attempt<SurgicalCase> attempt = cases.log(who, entry);
        if (!levels.isEmpty()) {
            attempt.fold(added -> selfScores.save(who, added.id(), levels).orThrow(), reasons -> 0);
        }
        return attempt;
    }

    private Rubric rubric(CaseEntry entry) {
        return rubrics.current(entry.procedureCode()).rubric();
    }

    private static boolean fit(Map<String, Integer> levels, Rubric rubric) {
        return levels.entrySet().stream().allMatch(level -> fits(level, rubric));
    }

    private static boolean fits(Map.Entry<String, Integer> level, Rubric rubric) {
        return rubric.find(level.getKey()).isPresent() && level.getValue() >= 1 && level.getValue() <= Step.LEVELS;
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    @Override
    @Transactional(readOnly = true)
    public List<CaseReceipt> receipts(SignedIn who, UUID submission) {
        return store.receipts(submission, who.personId());
    }

    @Override
    @Transactional(readOnly = true)
    public List<CaseAside> asides(SignedIn who) {
        return store.asides(who.personId());
    }

    @Override
    @Transactional(readOnly = true)
    public CaseAside aside(SignedIn who, UUID id) {
        return asides(who).stream()
                .filter(aside -> aside.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    @Override
    public Attempt<SurgicalCase> enterAside(SignedIn who, UUID id, CaseEntry entry, Map<String, Integer> levels) {
        store.hold(id);
        aside(who, id);
        List<Refusal> reasons = cases.against(who, CaseAnswers.of(entry));
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        Map<String, Integer> known = new LinkedHashMap<>(levels);
        Rubric rubric = rubric(entry);
        known.entrySet().removeIf(level -> !fits(level, rubric));
        Attempt<SurgicalCase> attempt = log(who, entry, known);
        attempt.fold(added -> store.settle(id, added.id(), who.personId(), now()), refused -> false);
        return attempt;
    }

    @Override
    public void putAway(SignedIn who, UUID id) {
        store.hold(id);
        CaseAside away = aside(who, id);
        store.settle(id, null, who.personId(), now());
        events.publishEvent(CaseChanged.putAway(who, away));
    }
}
