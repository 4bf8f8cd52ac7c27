package org.scrubline.people;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.platform.Audited;

/**
 * Records were opened to a visitor or closed again; one event for each trainee they are about.
 *
 * @param about the trainee
 * @param reason the purpose
 * @param after the days it is open, as first and last instant
 */
record VisitorAccessChanged(
        String action, UUID actor, UUID about, UUID programme, Item item, String reason, String after)
        implements Audited {

    static List<VisitorAccessChanged> of(String action, UUID actor, VisitorAccess access) {
        Stream<UUID> byTrainee = access.trainees().stream().map(Person::id);
        Stream<UUID> byRecord = access.records().stream().map(NamedRecords.NamedRecord::traineeId);
        return Stream.concat(byTrainee, byRecord)
                .distinct()
                .map(trainee -> new VisitorAccessChanged(
                        action,
                        actor,
                        trainee,
                        access.programmeId(),
                        new Item(
                                "visitor-access",
                                access.id(),
                                null,
                                access.visitor().printedName()),
                        access.purpose(),
                        access.from() + "/" + access.until()))
                .toList();
    }
}
