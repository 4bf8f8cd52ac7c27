package org.scrubline.platform.security;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.CredentialsContainer;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;

/** What a session remembers: which account entered which organisation. Roles are read anew for every request. */
class AccountPrincipal implements UserDetails, CredentialsContainer {

    private final UUID accountId;
    private final UUID tenantId;
    private final String username;
    private final boolean enabled;
    private @Nullable String passwordHash;

    AccountPrincipal(UUID accountId, UUID tenantId, String username, @Nullable String passwordHash, boolean enabled) {
        this.accountId = accountId;
        this.tenantId = tenantId;
        this.username = username;
        this.passwordHash = passwordHash;
        this.enabled = enabled;
    }

    /** The same with another hash to compare with. */
    AccountPrincipal withPassword(String hash) {
        return new AccountPrincipal(accountId, tenantId, username, hash, enabled);
    }

    UUID accountId() {
        return accountId;
    }

    UUID tenantId() {
        return tenantId;
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return List.of();
    }

    @Override
    public @Nullable String getPassword() {
        return passwordHash;
    }

    @Override
    public String getUsername() {
        return username;
    }

    @Override
    public boolean isEnabled() {
        return enabled;
    }

    @Override
    public void eraseCredentials() {
        passwordHash = null;
    }
}
