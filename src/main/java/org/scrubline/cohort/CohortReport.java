package org.scrubline.cohort;

import java.time.Instant;
import java.util.List;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.rubric.Rubric;

/**
 * One programme and one procedure.
 *
 * @param rubric the version cases are scored with now; its steps are the columns
 * @param rows the programme's trainees and whoever else has signed sheets in it, by name
 * @param worthALook with reasons; may be empty
 * @param settings of the programme when it was counted
 * @param at when it was counted
 */
public record CohortReport(
        Programme programme,
        Rubric rubric,
        List<TraineeRow> rows,
        List<WorthALook> worthALook,
        Timeliness timeliness,
        ProgrammeSettings settings,
        Instant at) {

    public CohortReport {
        rows = List.copyOf(rows);
        worthALook = List.copyOf(worthALook);
    }

    /** Counted sheets that are contested and not decided. */
    public int contested() {
        return rows.stream().mapToInt(TraineeRow::contested).sum();
    }

    /** Counted sheets that await their countersignature. */
    public int awaiting() {
        return rows.stream().mapToInt(TraineeRow::awaiting).sum();
    }

    /** Cases of all trainees that count; a case of two trainees counts for each. */
    public int cases() {
        return rows.stream().mapToInt(TraineeRow::cases).sum();
    }
}
