package org.scrubline.signoff;

import java.util.Optional;
import java.util.UUID;
import org.scrubline.people.NamedRecords;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Signed records as a director names them to a visitor: by the reference of their case. */
@Service
@Transactional(readOnly = true)
class VisitableRecords implements NamedRecords {

    private final SignedSheetQueries sheets;

    VisitableRecords(SignedSheetQueries sheets) {
        this.sheets = sheets;
    }

    @Override
    public Optional<NamedRecord> find(UUID id) {
        return sheets.byId(id)
                .map(signed -> new NamedRecord(
                        signed.id(),
                        signed.programmeId(),
                        signed.traineeId(),
                        SignedContent.read(signed.content())
                                .reviewed()
                                .operation()
                                .reference()));
    }
}
