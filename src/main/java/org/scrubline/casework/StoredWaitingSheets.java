package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredWaitingSheets implements WaitingSheets {

    private final WaitingSheetQueries queries;

    StoredWaitingSheets(WaitingSheetQueries queries) {
        this.queries = queries;
    }

    @Override
    public List<WaitingSheet> endedBefore(Instant at) {
        return queries.endedBefore(at);
    }

    @Override
    public List<WaitingSheet> ofScorer(UUID scorerId) {
        return queries.ofScorer(scorerId);
    }
}
