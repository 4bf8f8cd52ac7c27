package org.scrubline.people;

import java.util.UUID;

/** A person of the organisation under the name printed on signatures. */
public record Person(UUID id, String printedName, boolean active) {}
