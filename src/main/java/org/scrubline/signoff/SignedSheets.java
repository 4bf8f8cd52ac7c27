package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads signed sheets of the organisation; the newest version of each, oldest case first. */
public interface SignedSheets {

    Optional<SignedSheet> byId(UUID id);

    /** The newest signed version of a sheet. */
    Optional<SignedSheet> ofSheet(UUID sheetId);

    List<SignedSheet> ofTrainee(UUID traineeId);

    List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode);

    List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode);
}
