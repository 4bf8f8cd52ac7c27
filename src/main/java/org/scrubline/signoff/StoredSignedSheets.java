package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.signoff.SignedSheetQueries.Filter;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredSignedSheets implements SignedSheets {

    private final SignedSheetQueries queries;
    private final SignedCountQueries counts;

    StoredSignedSheets(SignedSheetQueries queries, SignedCountQueries counts) {
        this.queries = queries;
        this.counts = counts;
    }

    @Override
    public Optional<SignedSheet> byId(UUID id) {
        return queries.byId(id);
    }

    @Override
    public Optional<SignedSheet> ofSheet(UUID sheetId) {
        return queries.ofSheet(sheetId);
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId) {
        return queries.find(new Filter(null, null, traineeId, null, null));
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode) {
        return queries.find(new Filter(null, null, traineeId, null, procedureCode));
    }

    @Override
    public List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode) {
        return queries.find(new Filter(null, null, null, programmeId, procedureCode));
    }

    @Override
    public Count count(UUID programmeId, String procedureCode, Instant after) {
        return counts.count(programmeId, procedureCode, after);
    }
}
