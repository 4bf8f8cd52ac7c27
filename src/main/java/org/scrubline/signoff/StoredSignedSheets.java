package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.signoff.SignedSheetQueries.Filter;
import org.scrubline.signoff.SignedSheetQueries.Reach;
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
        return queries.find(Filter.sheet(Reach.COUNTING, sheetId)).stream().findFirst();
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId) {
        return queries.find(Filter.trainee(traineeId, null));
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode) {
        return queries.find(Filter.trainee(traineeId, procedureCode));
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode, Instant knownAt) {
        return queries.find(Filter.trainee(traineeId, procedureCode).knownAt(knownAt));
    }

    @Override
    public List<SignedSheet> ofTrainee(UUID traineeId, Instant knownAt) {
        return queries.find(Filter.trainee(traineeId, null).knownAt(knownAt));
    }

    @Override
    public List<SignedSheet> ofTraineeWithVoid(UUID traineeId, Instant knownAt) {
        return queries.find(Filter.trainee(traineeId, null).withVoid().knownAt(knownAt));
    }

    @Override
    public List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode) {
        return queries.find(Filter.programme(programmeId, procedureCode));
    }

    @Override
    public List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode, Instant knownAt) {
        return queries.find(Filter.programme(programmeId, procedureCode).knownAt(knownAt));
    }

    @Override
    public Count count(UUID programmeId, String procedureCode, Instant after) {
        return counts.count(programmeId, procedureCode, after);
    }

    @Override
    public Scored scored(UUID programmeId, String procedureCode) {
        return counts.scored(programmeId, procedureCode);
    }
}
