package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredPlannedCases implements PlannedCases {

    private final PlannedCaseQueries planned;
    private final CaseQueries done;
    private final Cases cases;

    StoredPlannedCases(PlannedCaseQueries planned, CaseQueries done, Cases cases) {
        this.planned = planned;
        this.done = done;
        this.cases = cases;
    }

    @Override
    public List<PlannedCase> ofScorer(UUID scorerId) {
        return complete(planned.ofScorer(scorerId));
    }

    @Override
    public List<PlannedCase> ofTrainee(UUID traineeId) {
        return complete(planned.ofTrainee(traineeId));
    }

    @Override
    public Optional<Instant> lastOperated(UUID traineeId, String procedureCode) {
        return done.lastOperated(traineeId, procedureCode);
    }

    private List<PlannedCase> complete(List<PlannedCaseQueries.Line> lines) {
        return lines.stream()
                .map(line -> new PlannedCase(
                        cases.get(line.caseId()),
                        line.traineeId(),
                        line.traineeName(),
                        line.scorerName(),
                        line.part(),
                        line.goal()))
                .toList();
    }
}
