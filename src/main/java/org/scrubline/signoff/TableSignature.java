package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import org.scrubline.platform.Credential;

/**
 * A signature made on a device that had no network.
 *
 * @param at clock of the device when it was made, whole seconds
 * @param zone zone of the device
 * @param sentAt clock of the device when it was sent, by which the two clocks are compared
 * @param hash what the passkey signed, lower-case hexadecimal
 */
public record TableSignature(
        Instant at, ZoneId zone, Instant sentAt, String hash, Credential.PasskeyAssertion credential) {}
