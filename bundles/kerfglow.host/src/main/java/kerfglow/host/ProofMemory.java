// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.CancellationException;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;

/** Opens proofs and makes their parts, and keeps the last ones while nothing that they come from changes. */
final class ProofMemory {
    /**
     * A proof and what it becomes.
     *
     * @param remarks what the person should know about the import
     */
    record Opened(Proof proof, List<Part> parts, List<String> remarks) {
    }

    /** All that an imported proof depends on. */
    private record ProofKey(Path file, String sha256, OptionalDouble scale, Optional<JobSheet.KnownDimension> known, double chordErrorMm, double unitsPerInch) {
    }

    /** All that parts depend on beside the proof. */
    private record PartsKey(List<JobSheet.RoleRule> roles, List<JobSheet.MaterialRule> materials, Set<Integer> knockOut) {
    }

    private static final int CHUNK = 1 << 16;
    /** Four times what the importer takes; the importer refuses the rest faster than it could be digested. */
    private static final long MOST_BYTES = 256L << 20;

    private final ProofImporter importer;
    private ProofKey proofKey;
    private Proof proof;
    private List<String> importRemarks = List.of();
    private PartsKey partsKey;
    private List<Part> parts;

    ProofMemory(ProofImporter importer) {
        this.importer = importer;
    }

    Opened open(Path file, JobSheet job, SettingsInForce settings, Watcher watcher) throws ProofException, SheetException {
        double limitSeconds = settings.get(HostSettings.IMPORT_TIME_LIMIT);
        Deadline deadline = new Deadline(limitSeconds);
        try {
            Optional<ProofKey> wanted = digest(file).map(sha256 -> new ProofKey(file, sha256, job.scale(), job.knownDimension(),
                    settings.get(HostSettings.CHORD_ERROR), settings.get(HostSettings.UNITS_PER_INCH)));
            if (wanted.isEmpty() || !wanted.get().equals(proofKey)) {
                proofKey = null;
                partsKey = null;
                List<String> remarks = new ArrayList<>();
                proof = new ProofOpener(importer).open(file, job, settings, watcher, remarks, deadline);
                importRemarks = remarks;
                proofKey = wanted.filter(key -> digest(file).equals(Optional.of(key.sha256()))).orElse(null); // one that changed while it was read is read again next time
            }
            PartsKey wantedParts = new PartsKey(job.roles(), job.materials(), job.knockOut());
            if (!wantedParts.equals(partsKey)) {
                watcher.progress("parts", 0);
                parts = new PartMaker(job, () -> deadline.require(watcher)).make(proof);
                partsKey = wantedParts;
            }
            watcher.progress("parts", 1);
            List<String> remarks = new ArrayList<>(importRemarks);
            JobFit.remark(job, proof, parts).ifPresent(remarks::add);
            return new Opened(proof, parts, remarks);
        } catch (CancellationException stopped) {
            if (watcher.isCancelled()) {
                throw stopped;
            }
            throw new ProofException("the import took longer than " + limitSeconds + " s; simplify the drawing, or raise " + HostSettings.IMPORT_TIME_LIMIT.key(), 0, 0, stopped);
        }
    }

    /** Empty when the file cannot be read as one, or is too large to be a proof; the importer then says why. */
    private static Optional<String> digest(Path file) {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), MessageDigest.getInstance("SHA-256"))) {
            byte[] chunk = new byte[CHUNK];
            long left = MOST_BYTES;
            for (int read = in.read(chunk); read >= 0; read = in.read(chunk)) { // the stream digests what passes
                left -= read;
                if (left < 0) {
                    return Optional.empty();
                }
            }
            return Optional.of(HexFormat.of().formatHex(((DigestInputStream) in).getMessageDigest().digest()));
        } catch (IOException unreadable) {
            return Optional.empty();
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
