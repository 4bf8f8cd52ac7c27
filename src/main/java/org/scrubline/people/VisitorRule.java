package org.scrubline.people;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.springframework.stereotype.Component;

/** What an access has to say: who, why, what, and until when. */
@Component
class VisitorRule {

    private final PeopleStore people;
    private final NamedRecords records;

    VisitorRule(PeopleStore people, NamedRecords records) {
        this.people = people;
        this.records = records;
    }

    /** Every reason against a request whose purpose is tidied. */
    List<Refusal> against(Programme programme, VisitorRequest request, Instant now) {
        List<Refusal> reasons = new ArrayList<>();
        if (request.visitorId() == null || !holds(programme, Role.VISITOR, request.visitorId())) {
            reasons.add(Refusal.at("visitor", "refusal.visitor.unknown"));
        }
        if (request.purpose().isEmpty()) {
            reasons.add(Refusal.at("purpose", "refusal.visitor.purpose"));
        }
        FreeText.check("purpose", request.purpose(), Visitors.PURPOSE_LENGTH).ifPresent(reasons::add);
        if (request.traineeIds().isEmpty() && request.recordIds().isEmpty()) {
            reasons.add(Refusal.at("trainees", "refusal.visitor.nothing"));
        }
        if (!request.traineeIds().stream().allMatch(trainee -> holds(programme, Role.TRAINEE, trainee))) {
            reasons.add(Refusal.at("trainees", "refusal.visitor.trainee"));
        }
        if (!request.recordIds().stream().allMatch(id -> isOf(programme, id))) {
            reasons.add(Refusal.at("records", "refusal.visitor.record"));
        }
        LocalDate today = LocalDate.ofInstant(now, programme.zone());
        againstDays(request.from(), request.until(), today).ifPresent(reasons::add);
        return reasons;
    }

    private static Optional<Refusal> againstDays(@Nullable LocalDate from, @Nullable LocalDate until, LocalDate today) {
        if (from == null || from.isBefore(today)) {
            return Optional.of(Refusal.at("from", "refusal.visitor.from"));
        }
        if (until == null || until.isBefore(from) || until.isAfter(from.plusDays(Visitors.LONGEST_DAYS - 1L))) {
            return Optional.of(Refusal.at("until", "refusal.visitor.until", Visitors.LONGEST_DAYS));
        }
        return Optional.empty();
    }

    private boolean holds(Programme programme, Role role, UUID person) {
        return people.holding(programme.id(), role).stream()
                .anyMatch(holder -> holder.id().equals(person));
    }

    private boolean isOf(Programme programme, UUID recordId) {
        return records.find(recordId)
                .filter(found -> found.programmeId().equals(programme.id()))
                .isPresent();
    }
}
