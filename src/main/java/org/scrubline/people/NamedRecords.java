package org.scrubline.people;

import java.util.Optional;
import java.util.UUID;

/** Tells what a signed record is, for opening it to a visitor. Implemented where records are kept. */
public interface NamedRecords {

    /** The record of that id, if there is one in the organisation. */
    Optional<NamedRecord> find(UUID id);

    /** A signed record; {@code label} is the reference of its case. */
    record NamedRecord(UUID id, UUID programmeId, UUID traineeId, String label) {}
}
