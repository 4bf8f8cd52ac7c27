package org.scrubline.committee;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A meeting as asked for; what is null was left out. */
public record MeetingPlan(
        @Nullable Instant at, List<UUID> members, @Nullable UUID chair, List<UUID> trainees) {

    public MeetingPlan {
        members = members.stream().distinct().toList();
        trainees = trainees.stream().distinct().toList();
    }
}
