package org.scrubline.people;

import java.time.ZoneId;
import java.util.UUID;

/** A training programme of an organisation; {@code zone} is where its days begin. */
public record Programme(UUID id, String name, ZoneId zone) {}
