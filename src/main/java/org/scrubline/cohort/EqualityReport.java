package org.scrubline.cohort;

import java.util.List;
import java.util.Map;
import org.scrubline.people.Characteristic;
import org.scrubline.people.Programme;

/**
 * A programme's tables on groups.
 *
 * @param programmes all this person may choose from
 * @param least the smallest number shown
 */
public record EqualityReport(
        Programme programme, List<Programme> programmes, Map<Characteristic, GroupTables> groups, int least) {

    public EqualityReport {
        programmes = List.copyOf(programmes);
        groups = Map.copyOf(groups);
    }
}
