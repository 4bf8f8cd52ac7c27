package org.scrubline.cohort;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.cohort.signal.Findings;
import org.scrubline.cohort.signal.ProgrammeRecord;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;

/**
 * What the rules say about a programme.
 *
 * @param programmes all this person may choose from
 * @param people trainees and scorers by id
 * @param training ids of those who are trainees of the programme now
 * @param steps names of steps by code
 */
public record SignalReport(
        Programme programme,
        List<Programme> programmes,
        ProgrammeRecord read,
        Findings findings,
        Map<String, Person> people,
        Set<String> training,
        Map<String, String> steps,
        ProgrammeSettings settings) {

    public SignalReport {
        programmes = List.copyOf(programmes);
        people = Map.copyOf(people);
        training = Set.copyOf(training);
        steps = Map.copyOf(steps);
    }

    /** When it was counted, to the hour. */
    public Instant at() {
        return read.at();
    }

    /** The name printed for an id. */
    public String name(String id) {
        Person person = people.get(id);
        return person == null ? id : person.printedName();
    }
}
