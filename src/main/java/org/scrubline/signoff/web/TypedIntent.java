package org.scrubline.signoff.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FreeText;
import org.scrubline.signoff.Intent;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.VoidGround;
import org.springframework.util.MultiValueMap;

/** What a form about a record intends, as it was filled in; the same when it is asked for and when it is sent. */
final class TypedIntent {

    private TypedIntent() {}

    /** Empty when the form names no act or no record. */
    static Optional<Intent> of(MultiValueMap<String, String> form) {
        RecordEvent act = constant(RecordEvent.values(), first(form, "act", "event"));
        UUID record = id(first(form, "record"));
        return act == null || record == null ? Optional.empty() : Optional.of(intent(act, record, form));
    }

    private static Intent intent(RecordEvent act, UUID record, MultiValueMap<String, String> form) {
        String answers = first(form, "answers");
        return new Intent(
                Intent.SCHEMA,
                act,
                record,
                first(form, "hash"),
                answers.isEmpty() ? null : answers,
                id(first(form, "reviewer", "delegate")),
                constant(VoidGround.values(), first(form, "ground")),
                form.getOrDefault("steps", List.of()),
                FreeText.tidy(first(form, "words", "reason")));
    }

    private static String first(MultiValueMap<String, String> form, String... fields) {
        return Stream.of(fields)
                .flatMap(field -> form.getOrDefault(field, List.of()).stream().limit(1))
                .findFirst()
                .orElse("");
    }

    private static @Nullable UUID id(String text) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException noId) {
            return null;
        }
    }

    private static <E extends Enum<E>> @Nullable E constant(E[] known, String name) {
        return Stream.of(known)
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElse(null);
    }
}
