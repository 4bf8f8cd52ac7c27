package org.scrubline.casework.reference;

import java.util.List;
import org.scrubline.people.Programme;
import org.scrubline.rubric.Rubric;

/**
 * The reference cases of a programme, the newest first.
 *
 * @param programmes all programmes the reader supervises in or directs, by name
 * @param procedures rubrics in force, which a director can choose from
 */
public record ReferenceList(
        Programme programme,
        List<Programme> programmes,
        List<ReferenceFile> files,
        boolean directs,
        List<Rubric> procedures) {

    public ReferenceList {
        programmes = List.copyOf(programmes);
        files = List.copyOf(files);
        procedures = List.copyOf(procedures);
    }
}
