package org.scrubline.casework.web;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.util.MultiValueMap;

/** Form fields as they came; a value that cannot be what it should be is an absent one. */
record Typed(MultiValueMap<String, String> values) {

    String text(String field) {
        return Optional.ofNullable(values.getFirst(field)).orElse("");
    }

    List<String> all(String field) {
        return values.getOrDefault(field, List.of());
    }

    Optional<UUID> id(String field) {
        try {
            return Optional.of(UUID.fromString(text(field)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    <E extends Enum<E>> Optional<E> one(String field, Class<E> kind) {
        return Arrays.stream(kind.getEnumConstants())
                .filter(constant -> constant.name().equals(text(field)))
                .findFirst();
    }
}
