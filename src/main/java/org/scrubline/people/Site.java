package org.scrubline.people;

import java.time.ZoneId;
import java.util.UUID;

/** A hospital or theatre where cases happen; {@code zone} is the zone of its clocks. */
public record Site(UUID id, String code, String name, ZoneId zone) {}
