package org.scrubline.signoff;

import java.util.UUID;
import java.util.function.Consumer;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredRecordExport implements RecordExport {

    private final RecordExportQueries queries;

    StoredRecordExport(RecordExportQueries queries) {
        this.queries = queries;
    }

    @Override
    public void each(SignedIn director, UUID programme, Consumer<Line> line) {
        if (!director.has(Role.DIRECTOR, programme)) {
            throw new NotFound();
        }
        queries.each(programme, line);
    }
}
