// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The bundles that may run, by the SHA-256 of their bytes: the file {@value #NAME} in the folder, as {@code sha256sum} writes it. Without
 * the file all may.
 */
final class AllowedDigests {
    static final String NAME = "allowed.sha256";

    private AllowedDigests() {
    }

    /**
     * Copies a bundle, so that what was looked at is what runs.
     *
     * @return why it must not run; empty when it may
     */
    static Optional<String> copy(Path bundle, Path to) throws IOException {
        MessageDigest sha256;
        try {
            sha256 = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible); // every Java platform has it
        }
        try (InputStream in = new DigestInputStream(Files.newInputStream(bundle), sha256)) {
            Files.copy(in, to);
        }
        Path list = bundle.resolveSibling(NAME);
        if (!Files.exists(list)) {
            return Optional.empty();
        }
        String digest = HexFormat.of().formatHex(sha256.digest());
        Set<String> allowed = Files.readAllLines(list).stream().map(line -> line.strip().split("\\s+")[0].toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
        return allowed.contains(digest) ? Optional.empty() : Optional.of("its digest " + digest + " does not stand in " + NAME + "; add it if you trust the bundle");
    }
}
