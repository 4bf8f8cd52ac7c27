package org.scrubline.casework.web;

import java.util.UUID;

/**
 * A sheet to be scored on a device without a network. Holds no name of a person.
 *
 * @param scrubline always "package"
 * @param base the sheet as it stands
 * @param caption reference, procedure, site and end of the case, for the list
 * @param shape hash of everything the page of the sheet shows apart from what is scored
 */
record SheetPackage(String scrubline, UUID sheet, SheetImage base, SheetFacts facts, String caption, String shape) {}
