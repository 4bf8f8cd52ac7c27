package org.scrubline.casework;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredSelfScores implements SelfScores {

    private final Cases cases;
    private final SelfScoreStore store;
    private final ScoreRequestStore requests;
    private final Rubrics rubrics;
    private final Clock clock;

    StoredSelfScores(Cases cases, SelfScoreStore store, ScoreRequestStore requests, Rubrics rubrics, Clock clock) {
        this.cases = cases;
        this.store = store;
        this.requests = requests;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Rubric rubric(UUID caseId) {
        return requests.rubricInUse(caseId)
                .flatMap(rubrics::byId)
                .orElseThrow(NotFound::new)
                .rubric();
    }

    @Override
    @Transactional(readOnly = true)
    public Map<String, Integer> of(UUID caseId, UUID traineeId) {
        return store.levels(caseId, traineeId);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Map<String, Integer>> ofTrainee(UUID traineeId) {
        return store.levels(traineeId);
    }

    @Override
    @Transactional(readOnly = true)
    public boolean locked(UUID caseId, UUID traineeId) {
        return anySigned(store.sheetStates(caseId, traineeId));
    }

    private static boolean anySigned(List<SheetState> states) {
        return states.stream().anyMatch(state -> state != SheetState.OPEN);
    }

    @Override
    public Attempt<Integer> save(SignedIn who, UUID caseId, Map<String, Integer> levels) {
        UUID trainee = who.personId();
        if (!cases.open(who, caseId).hasTrainee(trainee)) {
            throw new NotFound();
        }
        Rubric rubric = rubric(caseId);
        if (anySigned(store.sheetStatesHeld(caseId, trainee))) {
            return Attempt.refused(Refusal.of("refusal.self-score.locked"));
        }
        boolean known =
                levels.keySet().stream().allMatch(code -> rubric.find(code).isPresent());
        boolean inRange = levels.values().stream().allMatch(level -> level >= 1 && level <= Step.LEVELS);
        if (!known || !inRange) {
            return Attempt.refused(Refusal.of("refusal.self-score.level"));
        }
        store.replace(caseId, trainee, levels, clock.instant());
        return Attempt.done(levels.size());
    }
}
