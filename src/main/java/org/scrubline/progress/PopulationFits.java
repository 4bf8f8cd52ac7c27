package org.scrubline.progress;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.ModelSettings;
import org.springframework.stereotype.Component;

/**
 * The population values in force for a programme and procedure. A stored fit serves until 20 sheets were signed that it
 * has not seen, or until it is a day old and has not seen all of them.
 */
@Component
class PopulationFits {

    /** Sheets unseen at which a fit is renewed. */
    static final int RENEW_AFTER = 20;

    private static final Duration RENEW_EVERY = Duration.ofDays(1);

    private final PopulationFitStore store;
    private final Ledger ledger;
    private final Clock clock;

    PopulationFits(PopulationFitStore store, Ledger ledger, Clock clock) {
        this.store = store;
        this.ledger = ledger;
        this.clock = clock;
    }

    /** The fit to use with these scores; made and kept now when the stored one is too far behind. */
    StoredFit current(UUID programmeId, String procedureCode, ProgrammeScores scores) {
        Instant now = clock.instant();
        return store.newest(programmeId, procedureCode)
                .filter(stored -> serves(stored, scores, now))
                .orElseGet(() -> renew(programmeId, procedureCode, scores, now));
    }

    private static boolean serves(StoredFit stored, ProgrammeScores scores, Instant now) {
        if (stored.fit().assessments() == 0 && scores.table().assessments() > 0) {
            return false;
        }
        int more = Math.abs(scores.sheets() - stored.sheets());
        int behind = Math.max(more, scores.signedAfter(stored.dataUntil()));
        boolean old = Duration.between(stored.fittedAt(), now).compareTo(RENEW_EVERY) > 0;
        return behind == 0 || (behind < RENEW_AFTER && !old);
    }

    private StoredFit renew(UUID programmeId, String procedureCode, ProgrammeScores scores, Instant now) {
        CompetencyModel model = new CompetencyModel(ModelSettings.standard(Step.LEVELS));
        StoredFit fitted = new StoredFit(model.fit(scores.table()), scores.until(), scores.sheets(), now);
        UUID id = UUID.randomUUID();
        store.add(id, programmeId, procedureCode, fitted);
        ledger.append(LeafKind.POPULATION_FIT, id);
        return fitted;
    }
}
