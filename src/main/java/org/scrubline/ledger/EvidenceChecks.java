package org.scrubline.ledger;

import java.io.IOException;
import java.io.Writer;
import java.util.Optional;
import java.util.UUID;

/** Checks of the evidence of the organisation in scope, and all of it as a file. */
public interface EvidenceChecks {

    /** Asks for a check, which a job then makes. Asking again while one is waiting or running changes nothing. */
    void ask(UUID person);

    Optional<AskedCheck> newest();

    /** Writes everything as an evidence file (docs/evidence-format.md). */
    void export(Writer out) throws IOException;
}
