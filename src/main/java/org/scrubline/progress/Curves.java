package org.scrubline.progress;

import java.util.UUID;

/** Solves a trainee's competency curve from the signed sheets of this moment. */
public interface Curves {

    /**
     * The curve in the programme of the trainee's newest counted case. Whether the reader may see the trainee was
     * settled by reading {@code progress}; no other trainee's number is in the answer.
     *
     * @param progress what was read of this trainee and procedure
     */
    TraineeCurve of(UUID traineeId, ProcedureProgress progress);
}
