package org.scrubline.signoff;

import java.util.UUID;

/**
 * A signed sheet, or a new version of one, was added to the evidence. Published inside the transaction that signed it,
 * so a listener that fails undoes the signature.
 */
public record EvidenceAdded(UUID signedSheetId, UUID programmeId, String procedureCode) {}
