package org.scrubline.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.Part;
import org.scrubline.rubric.Band;

/**
 * An ended case whose outcome is judged, as the lists need it.
 *
 * @param procedure as performed: what a converted case was converted to
 * @param operators its trainees, by name; without those whose every sheet about it is void
 */
public record FiltrationCase(
        UUID id,
        UUID programmeId,
        String reference,
        String procedure,
        Band band,
        Instant endedAt,
        ZoneId zone,
        List<Operator> operators) {

    /**
     * A trainee on the case.
     *
     * @param part as the signed sheet has it, as claimed until there is one
     */
    public record Operator(UUID id, String name, Part part) {

        boolean operated() {
            return part != Part.ASSISTED;
        }
    }

    public FiltrationCase {
        operators = List.copyOf(operators);
    }

    /** By the clock of its site. */
    public LocalDate operatedOn() {
        return LocalDate.ofInstant(endedAt, zone);
    }
}
