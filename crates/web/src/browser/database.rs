//! The browser's own database: texts under keys, in three stores, each write finished before it is told.

use futures_channel::oneshot;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{IdbDatabase, IdbKeyRange, IdbOpenDbRequest, IdbRequest, IdbTransaction, IdbTransactionMode};

use super::window;

const NAME: &str = "groundhold";
const VERSION: u32 = 1;
/// What is known of each job; the texts each began with; the journals.
pub const JOBS: &str = "jobs";
/// The texts each job began with.
pub const BASES: &str = "bases";
/// Every entry of every journal.
pub const JOURNAL: &str = "journal";

/// An open database.
#[derive(Clone)]
pub struct Database(IdbDatabase);

/// Why the browser refused, in its own words.
fn why(e: &JsValue) -> String {
    let told = js_sys::Reflect::get(e, &"message".into()).ok().and_then(|m| m.as_string());
    let name = js_sys::Reflect::get(e, &"name".into()).ok().and_then(|m| m.as_string());
    match (name, told) {
        (Some(n), _) if n == "QuotaExceededError" => "the storage of this browser is full".into(),
        (_, Some(t)) if !t.is_empty() => t,
        (Some(n), _) => n,
        _ => format!("{e:?}"),
    }
}

/// Waits for a request.
async fn done(request: &IdbRequest) -> Result<JsValue, String> {
    let (tell, told) = oneshot::channel::<Result<JsValue, String>>();
    let tell = std::rc::Rc::new(std::cell::RefCell::new(Some(tell)));
    let (t1, t2, r1, r2) = (tell.clone(), tell, request.clone(), request.clone());
    let fine = Closure::<dyn FnMut()>::new(move || {
        if let Some(t) = t1.borrow_mut().take() {
            // Nobody waits any more: nothing to do.
            let _ = t.send(r1.result().map_err(|e| why(&e)));
        }
    });
    let bad = Closure::<dyn FnMut()>::new(move || {
        if let Some(t) = t2.borrow_mut().take() {
            let said = r2.error().ok().flatten().map_or("the browser refused".into(), |e| why(&e));
            let _ = t.send(Err(said));
        }
    });
    request.set_onsuccess(Some(fine.as_ref().unchecked_ref()));
    request.set_onerror(Some(bad.as_ref().unchecked_ref()));
    told.await.unwrap_or_else(|_| Err("the browser gave no answer".into()))
}

/// Waits until a transaction is on the disk, as far as the browser says.
async fn finished(transaction: &IdbTransaction) -> Result<(), String> {
    let (tell, told) = oneshot::channel::<Result<(), String>>();
    let tell = std::rc::Rc::new(std::cell::RefCell::new(Some(tell)));
    let (t1, t2, own) = (tell.clone(), tell, transaction.clone());
    let fine = Closure::<dyn FnMut()>::new(move || {
        if let Some(t) = t1.borrow_mut().take() {
            let _ = t.send(Ok(()));
        }
    });
    let bad = Closure::<dyn FnMut()>::new(move || {
        if let Some(t) = t2.borrow_mut().take() {
            let said = own.error().map_or("the browser broke the write off".into(), |e| why(&e));
            let _ = t.send(Err(said));
        }
    });
    transaction.set_oncomplete(Some(fine.as_ref().unchecked_ref()));
    transaction.set_onerror(Some(bad.as_ref().unchecked_ref()));
    transaction.set_onabort(Some(bad.as_ref().unchecked_ref()));
    told.await.unwrap_or_else(|_| Err("the browser gave no answer".into()))
}

/// Opens the database, and makes its stores the first time.
///
/// # Errors
/// Why the browser has none.
pub async fn open() -> Result<Database, String> {
    let factory = window().and_then(|w| w.indexed_db().ok().flatten()).ok_or("this browser has no storage here")?;
    let request: IdbOpenDbRequest = factory.open_with_u32(NAME, VERSION).map_err(|e| why(&e))?;
    let own = request.clone();
    let grow = Closure::<dyn FnMut()>::new(move || {
        let Some(db) = own.result().ok().and_then(|r| r.dyn_into::<IdbDatabase>().ok()) else { return };
        for store in [JOBS, BASES, JOURNAL] {
            // A store that is there already is kept as it is.
            let _ = db.create_object_store(store);
        }
    });
    request.set_onupgradeneeded(Some(grow.as_ref().unchecked_ref()));
    let db = done(&request).await?;
    db.dyn_into::<IdbDatabase>().map(Database).map_err(|_| "the browser gave something that is no database".into())
}

/// All keys that begin so.
fn prefixed(prefix: &str) -> Result<IdbKeyRange, String> {
    IdbKeyRange::bound(&prefix.into(), &format!("{prefix}\u{ffff}").into()).map_err(|e| why(&e))
}

impl Database {
    /// Writes texts under keys, all or none; comes back when they are written.
    ///
    /// # Errors
    /// Why the browser refused: most often that its storage is full.
    pub async fn put(&self, rows: &[(&str, String, String)]) -> Result<(), String> {
        let stores = js_sys::Array::new();
        rows.iter().for_each(|(store, ..)| {
            stores.push(&(*store).into());
        });
        let transaction = self
            .0
            .transaction_with_str_sequence_and_mode(&stores, IdbTransactionMode::Readwrite)
            .map_err(|e| why(&e))?;
        for (store, key, value) in rows {
            let store = transaction.object_store(store).map_err(|e| why(&e))?;
            store.put_with_key(&value.into(), &key.into()).map_err(|e| why(&e))?;
        }
        finished(&transaction).await
    }

    /// The text under a key.
    ///
    /// # Errors
    /// Why the browser refused.
    pub async fn get(&self, store: &str, key: &str) -> Result<Option<String>, String> {
        let transaction = self.0.transaction_with_str(store).map_err(|e| why(&e))?;
        let request = transaction.object_store(store).and_then(|s| s.get(&key.into())).map_err(|e| why(&e))?;
        Ok(done(&request).await?.as_string())
    }

    /// All texts whose keys begin so, in the order of the keys.
    ///
    /// # Errors
    /// Why the browser refused.
    pub async fn all(&self, store: &str, prefix: &str) -> Result<Vec<(String, String)>, String> {
        let transaction = self.0.transaction_with_str(store).map_err(|e| why(&e))?;
        let there = transaction.object_store(store).map_err(|e| why(&e))?;
        let range = prefixed(prefix)?;
        let keys = there.get_all_keys_with_key(&range).map_err(|e| why(&e))?;
        let values = there.get_all_with_key(&range).map_err(|e| why(&e))?;
        let keys = done(&keys).await?;
        let values = if values.ready_state() == web_sys::IdbRequestReadyState::Done {
            values.result().map_err(|e| why(&e))?
        } else {
            done(&values).await?
        };
        let texts =
            |v: JsValue| js_sys::Array::from(&v).iter().map(|x| x.as_string().unwrap_or_default()).collect::<Vec<_>>();
        Ok(texts(keys).into_iter().zip(texts(values)).collect())
    }

    /// Takes out everything whose key begins so.
    ///
    /// # Errors
    /// Why the browser refused.
    pub async fn remove(&self, store: &str, prefix: &str) -> Result<(), String> {
        let transaction =
            self.0.transaction_with_str_and_mode(store, IdbTransactionMode::Readwrite).map_err(|e| why(&e))?;
        let there = transaction.object_store(store).map_err(|e| why(&e))?;
        there.delete(&prefixed(prefix)?.into()).map_err(|e| why(&e))?;
        finished(&transaction).await
    }
}
