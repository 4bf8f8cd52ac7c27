package org.scrubline.casework;

import java.util.UUID;

/** Asked by the list of sheets to score; answered by the room that keeps the releases. */
public interface LateAdmission {

    /** Whether a director let this sheet be signed although the time for it is over. */
    boolean released(UUID sheetId);
}
