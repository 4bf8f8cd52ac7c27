package org.scrubline.provision;

import java.util.Optional;

/**
 * What a directory wants somebody to be. An empty value leaves things as they are, or gives none at the beginning.
 *
 * @param externalId an empty text takes it away
 */
public record Wanted(
        Optional<String> username,
        Optional<String> printedName,
        Optional<String> externalId,
        Optional<Boolean> active) {}
