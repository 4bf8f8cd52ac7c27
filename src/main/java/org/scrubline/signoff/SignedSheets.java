package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Reads signed sheets of the organisation that count: the newest signed version of each that is not void, oldest case
 * first. Read as known at an instant, versions signed and voids confirmed later are as if they had not happened yet, so
 * that numbers of that day can be made again.
 */
public interface SignedSheets {

    /** A signed sheet of whatever version, void or not. */
    Optional<SignedSheet> byId(UUID id);

    /** The version of a sheet that counts; empty when none was signed or the sheet is void. */
    Optional<SignedSheet> ofSheet(UUID sheetId);

    List<SignedSheet> ofTrainee(UUID traineeId);

    List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode);

    /** As known at an instant. */
    List<SignedSheet> ofTrainee(UUID traineeId, String procedureCode, Instant knownAt);

    /** Of every procedure, as known at an instant. */
    List<SignedSheet> ofTrainee(UUID traineeId, Instant knownAt);

    /** The same with the newest version of each void sheet, which counts nowhere and stays readable. */
    List<SignedSheet> ofTraineeWithVoid(UUID traineeId, Instant knownAt);

    /** To be counted: without the texts that were signed. */
    List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode);

    /** The same as known at an instant. */
    List<SignedSheet> ofProgramme(UUID programmeId, String procedureCode, Instant knownAt);

    /** How many of a programme's sheets speak of a trainee who operated, wholly or in parts. */
    Count count(UUID programmeId, String procedureCode, Instant after);

    /** What was scored in those of a programme's sheets that speak of a trainee who operated, wholly or in parts. */
    Scored scored(UUID programmeId, String procedureCode);

    /**
     * Sheets counted.
     *
     * @param after those of them signed later than the instant asked about
     */
    record Count(int all, int after) {}

    /**
     * Sheets read without their scores.
     *
     * @param until the newest signature among them; the beginning of time without any
     * @param steps codes of the steps with a level on one of them, sorted
     */
    record Scored(Instant until, List<String> steps) {}
}
