// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The sheets of one run.
 *
 * @param job the job sheet
 * @param shop the shop sheet
 */
record Sheets(JobSheet job, ShopSheet shop) {

    /** Those that the request names, or that lie beside the proof; remarks say which. */
    static Sheets of(RunRequest request, List<String> remarks) throws SheetException {
        JobSheet job = jobSheet(request, remarks);
        return new Sheets(job, shopSheet(request, job, remarks));
    }

    private static JobSheet jobSheet(RunRequest request, List<String> remarks) throws SheetException {
        if (request.job().isPresent()) {
            return request.job().get();
        }
        if (request.jobSheet().isPresent()) {
            return JobSheet.read(request.jobSheet().get());
        }
        String name = String.valueOf(request.file().getFileName());
        int point = name.lastIndexOf('.');
        Path beside = request.file().resolveSibling((point > 0 ? name.substring(0, point) : name) + ".job.yaml");
        if (Files.isRegularFile(beside)) {
            remarks.add("The job sheet " + beside.getFileName() + " beside the proof is used.");
            return JobSheet.read(beside);
        }
        remarks.add("No job sheet: every part counts as a face, at the size that the file says.");
        return JobSheet.NONE;
    }

    private static ShopSheet shopSheet(RunRequest request, JobSheet job, List<String> remarks) throws SheetException {
        Optional<Path> path = request.shopSheet().or(job::shopSheet);
        if (path.isEmpty()) {
            remarks.add("No shop sheet: the checks use the stock and the limits that they bring.");
            return ShopSheet.NONE;
        }
        if (request.shopSheet().isEmpty() && !Files.exists(path.get())) {
            throw new SheetException(job.from() + ", shop: there is no file " + path.get().getFileName() + " in " + path.get().normalize().getParent()
                    + "; the path counts from the job sheet", null);
        }
        return ShopSheet.read(path.get());
    }
}
