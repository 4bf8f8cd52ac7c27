package org.scrubline.platform.provider;

/**
 * Who a provider says somebody is.
 *
 * @param issuer the provider
 * @param subject its name for the person, which it never gives to anybody else (OpenID Connect Core 1.0, section 2)
 * @param twoFactors whether it says, in a way the connection counts, that it saw two factors
 */
public record ProviderIdentity(String issuer, String subject, boolean twoFactors) {}
