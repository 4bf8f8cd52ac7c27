package org.scrubline.committee.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FreeText;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** Form fields as they came; a value that cannot be what it should be is an absent one. */
record Typed(MultiValueMap<String, String> values) {

    static Typed none() {
        return new Typed(new LinkedMultiValueMap<>());
    }

    String text(String field) {
        return Optional.ofNullable(values.getFirst(field)).orElse("");
    }

    String words(String field) {
        return FreeText.tidy(values.getFirst(field));
    }

    List<String> all(String field) {
        return values.getOrDefault(field, List.of());
    }

    Optional<UUID> id(String field) {
        return id(Optional.of(text(field)));
    }

    List<UUID> ids(String field) {
        return all(field).stream()
                .flatMap(one -> id(Optional.of(one)).stream())
                .distinct()
                .toList();
    }

    private static Optional<UUID> id(Optional<String> text) {
        try {
            return text.map(UUID::fromString);
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    <E extends Enum<E>> Optional<E> one(String field, Class<E> kind) {
        return one(kind, text(field));
    }

    static <E extends Enum<E>> Optional<E> one(Class<E> kind, String name) {
        return Arrays.stream(kind.getEnumConstants())
                .filter(constant -> constant.name().equals(name))
                .findFirst();
    }

    /** A time on the clocks of a place; of one the clocks showed twice the earlier, and none that they skipped. */
    @Nullable
    Instant at(String field, ZoneId zone) {
        try {
            LocalDateTime local = LocalDateTime.parse(text(field).strip());
            return zone.getRules().getValidOffsets(local).isEmpty()
                    ? null
                    : local.atZone(zone).toInstant();
        } catch (DateTimeException noTime) {
            return null;
        }
    }

    @Nullable
    LocalDate day(String field) {
        try {
            return LocalDate.parse(text(field).strip());
        } catch (DateTimeException noDay) {
            return null;
        }
    }

    Signature signature() {
        return Signature.byPassword(text("reason"), text("password"));
    }

    /** Everything but the credential, to be shown again. */
    Map<String, String> shown() {
        return values.toSingleValueMap().entrySet().stream()
                .filter(entry -> entry.getValue() != null)
                .filter(entry ->
                        !entry.getKey().equals("password") && !entry.getKey().equals("assertion"))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}
