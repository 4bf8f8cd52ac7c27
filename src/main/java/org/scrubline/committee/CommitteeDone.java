package org.scrubline.committee;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;

/** Something the committee or its office did. */
record CommitteeDone(String action, Item item, @Nullable UUID about, UUID programme) implements Audited {

    static CommitteeDone meeting(String action, Meeting meeting) {
        return new CommitteeDone(action, new Item("meeting", meeting.id(), null, ""), null, meeting.programmeId());
    }

    /** About a record of one trainee. */
    static CommitteeDone record(String action, String kind, UUID id, UUID trainee, UUID programme) {
        return new CommitteeDone(action, new Item(kind, id, null, ""), trainee, programme);
    }
}
