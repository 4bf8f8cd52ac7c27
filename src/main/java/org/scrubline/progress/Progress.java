package org.scrubline.progress;

import java.util.UUID;
import org.scrubline.platform.SignedIn;

/** Reads what the signed sheets say about a trainee. */
public interface Progress {

    /**
     * A trainee's numbers. Trainees read their own; directors and committee members those of a trainee of their
     * programme, from that programme's sheets alone.
     *
     * @throws org.scrubline.platform.NotFound for everyone else and for unknown people
     */
    TraineeProgress read(SignedIn who, UUID traineeId);
}
