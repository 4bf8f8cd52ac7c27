package org.scrubline.training;

import java.util.List;
import java.util.Set;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;

/**
 * A training record as its reader may see it.
 *
 * @param entries newest day first
 * @param writes the kinds the reader may add
 * @param answers whether the reader may answer practice that waits
 * @param declares whether the reader may declare cases of before joining
 */
public record TrainingFile(
        Programme programme,
        Person trainee,
        List<TrainingEntry> entries,
        Set<TrainingKind> writes,
        boolean answers,
        boolean declares) {

    public TrainingFile {
        entries = List.copyOf(entries);
        writes = Set.copyOf(writes);
    }

    /** Practice nobody answered yet. */
    public List<TrainingEntry> waiting() {
        return entries.stream().filter(TrainingEntry::waits).toList();
    }
}
