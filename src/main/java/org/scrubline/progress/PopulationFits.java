package org.scrubline.progress;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.ModelSettings;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Component;

/** The population values in force for a programme and procedure: those of the newest stored fit. */
@Component
class PopulationFits {

    private final PopulationFitStore store;
    private final SignedSheets sheets;
    private final Ledger ledger;
    private final Clock clock;

    PopulationFits(PopulationFitStore store, SignedSheets sheets, Ledger ledger, Clock clock) {
        this.store = store;
        this.sheets = sheets;
        this.ledger = ledger;
        this.clock = clock;
    }

    /**
     * The stored fit; the first one is made and kept now, so that a new programme need not wait for a job.
     *
     * @param scores of the programme, asked for when the stored fit does not answer
     */
    StoredFit current(UUID programmeId, String procedureCode, Supplier<ProgrammeScores> scores) {
        return store.newest(programmeId, procedureCode)
                .filter(stored ->
                        stored.fit().assessments() > 0 || scores.get().table().assessments() == 0)
                .orElseGet(() -> renew(programmeId, procedureCode, scores.get()));
    }

    /**
     * The stored fit that was in force at an instant, when there was one.
     *
     * @param scores as they were known then
     */
    Optional<StoredFit.Known> known(UUID programmeId, String procedureCode, ProgrammeScores scores, Instant knownAt) {
        return store.newest(programmeId, procedureCode, knownAt)
                .filter(known ->
                        known.fit().fit().assessments() > 0 || scores.table().assessments() == 0);
    }

    /** A fit of these scores, kept nowhere. */
    static StoredFit fitted(ProgrammeScores scores, Instant at) {
        CompetencyModel model = new CompetencyModel(ModelSettings.standard(Step.LEVELS));
        return new StoredFit(model.fit(scores.table()), scores.until(), scores.sheets(), at);
    }

    /** Makes and keeps a fit of these scores. */
    StoredFit renew(UUID programmeId, String procedureCode, ProgrammeScores scores) {
        StoredFit fitted = fitted(scores, clock.instant());
        ledger.append(LeafKind.POPULATION_FIT, store.add(programmeId, procedureCode, fitted));
        return fitted;
    }

    /**
     * How many counted sheets the stored fit has not seen; all of them while there is none. A sheet received late may
     * carry an older signature than the newest one seen, so the totals are compared too.
     */
    int unseen(UUID programmeId, String procedureCode) {
        Optional<StoredFit.Seen> seen = store.seen(programmeId, procedureCode);
        Instant until = seen.map(StoredFit.Seen::dataUntil).orElse(Instant.EPOCH);
        SignedSheets.Count count = sheets.count(programmeId, procedureCode, until);
        int more = count.all() - seen.map(StoredFit.Seen::sheets).orElse(0);
        return Math.max(Math.abs(more), count.after());
    }
}
